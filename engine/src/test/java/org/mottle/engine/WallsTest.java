package org.mottle.engine;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noMethods;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;

/** The walls of the engine: pure computation, one direction of flow. */
@AnalyzeClasses(
    packages = "org.mottle.engine",
    importOptions = ImportOption.DoNotIncludeTests.class)
class WallsTest {

  @ArchTest
  static final ArchRule no_files =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.io..", "java.nio.file..", "java.net..", "java.sql..");

  @ArchTest
  static final ArchRule no_console =
      noClasses()
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .orShould()
          .accessField(System.class, "in");

  @ArchTest
  static final ArchRule no_logging =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.util.logging..", "org.slf4j..");

  @ArchTest
  static final ArchRule no_clock =
      noClasses()
          .should()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethod(Instant.class, "now")
          .orShould()
          .callMethod(LocalDate.class, "now")
          .orShould()
          .callMethod(LocalDateTime.class, "now")
          .orShould()
          .callMethod(OffsetDateTime.class, "now")
          .orShould()
          .callMethod(ZonedDateTime.class, "now")
          .orShould()
          .dependOnClassesThat()
          .areAssignableTo(Clock.class);

  @ArchTest
  static final ArchRule no_unseeded_chance =
      noClasses()
          .should()
          .callConstructor(java.util.Random.class)
          .orShould()
          .callMethod(Math.class, "random")
          .orShould()
          .dependOnClassesThat()
          .haveFullyQualifiedName("java.util.concurrent.ThreadLocalRandom");

  @ArchTest
  static final ArchRule only_the_named_libraries =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideOutsideOfPackages(
              "org.mottle.engine..",
              "java..",
              "org.locationtech.jts..",
              "org.apache.commons.math3..");

  @ArchTest
  static final ArchRule no_static_state =
      fields()
          .that()
          .areStatic()
          .should()
          .beFinal()
          .andShould()
          .notHaveModifier(JavaModifier.VOLATILE);

  /** Scratch memory of one worker may change; nothing that is handed out does. */
  @ArchTest
  static final ArchRule no_open_state = noFields().that().areNotStatic().should().bePublic();

  @ArchTest
  static final ArchRule no_setters =
      noMethods().that().arePublic().should().haveNameMatching("set[A-Z].*");

  @ArchTest
  static final ArchRule no_cycles =
      slices().matching("org.mottle.engine.(*)..").should().beFreeOfCycles();
}
