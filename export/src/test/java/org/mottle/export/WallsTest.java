package org.mottle.export;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The walls of the export module. */
@AnalyzeClasses(packages = "org.mottle", importOptions = ImportOption.DoNotIncludeTests.class)
class WallsTest {

  @ArchTest
  static final ArchRule the_engine_never_sees_export =
      noClasses()
          .that()
          .resideInAPackage("org.mottle.engine..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("org.mottle.export..", "org.mottle.demo..");

  @ArchTest
  static final ArchRule the_demo_course_sees_neither =
      noClasses()
          .that()
          .resideInAPackage("org.mottle.demo..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("org.mottle.export..", "org.mottle.engine..");

  /** Only the crs room computes with coordinate systems; the raster writer passes one on. */
  @ArchTest
  static final ArchRule only_crs_knows_degrees =
      noClasses()
          .that()
          .resideInAPackage("org.mottle.export..")
          .and()
          .resideOutsideOfPackage("org.mottle.export.crs..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("org.geotools.referencing..");

  @ArchTest
  static final ArchRule only_the_command_line_ends_the_process =
      noClasses()
          .that()
          .resideInAPackage("org.mottle.export..")
          .and()
          .resideOutsideOfPackage("org.mottle.export.cli..")
          .should()
          .callMethod(System.class, "exit", int.class)
          .orShould()
          .accessField(System.class, "out");

  /** Binding costs a short command 0.1 s of class loading. */
  @ArchTest
  static final ArchRule the_main_job_binds_no_classes =
      noClasses()
          .that()
          .resideInAPackage("org.mottle.export..")
          .and()
          .resideOutsideOfPackages("org.mottle.export.cli..", "org.mottle.export.model..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("com.fasterxml.jackson.databind..");

  @ArchTest
  static final ArchRule no_cycles =
      slices().matching("org.mottle.export.(*)..").should().beFreeOfCycles();
}
