package org.mottle.export.settings;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.mottle.engine.empirical.Estimator;
import org.mottle.engine.fit.Shape;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.MappingSettings.Needed;
import org.mottle.engine.mapping.Method;
import org.mottle.engine.mapping.Pooling;
import org.mottle.engine.mapping.VariogramSettings;
import org.mottle.engine.moisture.PermittivityCurve;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.engine.survey.Purpose;
import org.mottle.engine.survey.TargetBand;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;
import org.mottle.export.read.FieldNames;
import org.mottle.export.read.InputOptions.MoistureUnit;
import org.mottle.export.record.Json;

/**
 * Reads a settings file (YAML). Unknown keys are refused with the nearest known one; every problem
 * of the file is collected before anything stops.
 */
public final class SettingsReader {

  private static final String AUTO = "auto";
  private static final String[] CURVES = {"topp", "ledieu", "malicki", "roth"};

  /** Shapes that level off: of others the readings of a green have no mean. */
  private static final String[] MODELS =
      Stream.concat(
              Stream.of(AUTO),
              Arrays.stream(Shape.values())
                  .filter(s -> s.model(1, 1, 0.5).bounded())
                  .map(SettingsReader::label))
          .toArray(String[]::new);

  /** More classes than pairs fill would be a slip of the decimal point. */
  private static final int MOST_LAGS = 1000;

  /** No receiver tells places apart that lie nearer, m. */
  private static final double NARROWEST_LAG_M = 0.01;

  private final String file;
  private final Problems problems = new Problems();

  private SettingsReader(String file) {
    this.file = file;
  }

  /**
   * @throws InputRefused with one line a problem; also when there is no such file
   * @throws IOException when the file cannot be read
   */
  public static SiteSettings read(Path path) throws IOException {
    if (!Files.isRegularFile(path)) {
      throw new InputRefused(
          path + (Files.isDirectory(path) ? " is a folder; give a YAML file" : ": no such file"));
    }
    String file = path.getFileName().toString();
    try {
      return parse(file, Files.readString(path));
    } catch (CharacterCodingException e) {
      throw new InputRefused(file + ": not UTF-8 text; save it as UTF-8");
    }
  }

  /** As {@link #read}, from text; {@code file} is what messages call it. */
  public static SiteSettings parse(String file, String yaml) throws IOException {
    SettingsReader reader = new SettingsReader(file);
    SiteSettings settings = reader.site(reader.root(yaml));
    reader.problems.throwIfAny();
    return settings;
  }

  /** The whole file by the streaming parser; binding would cost every command 0.1 s of loading. */
  private SettingsNode root(String yaml) throws IOException {
    YAMLFactory factory =
        YAMLFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build();
    try (JsonParser parser = factory.createParser(yaml)) {
      Object value = parser.nextToken() == null ? null : Json.value(parser);
      return SettingsNode.root(file, problems, value);
    } catch (JsonProcessingException e) {
      problems.add(
          "%s, line %d: not readable as YAML (%s)",
          file,
          e.getLocation() == null ? 0 : e.getLocation().getLineNr(),
          e.getOriginalMessage().lines().findFirst().orElse(""));
      problems.throwIfAny();
      throw e;
    }
  }

  private SiteSettings site(SettingsNode root) {
    root.allow(
        "columns",
        "calibration",
        "bands",
        "crs",
        "working_crs",
        "unit",
        "method",
        "cell_m",
        "iso_step_pct",
        "measurement_sd_pct",
        "duplicates",
        "variogram",
        "needed",
        "uncertainty",
        "positions",
        "water");
    return new SiteSettings(
        columns(root.at("columns")),
        bands(root.at("bands")),
        root.at("crs").text(),
        root.at("working_crs").text(),
        root.at("unit").choice(MoistureUnit.values(), SettingsReader::label, MoistureUnit.ASK),
        mapping(root),
        curve(root.at("calibration")),
        WaterReader.at(root.at("water").at("at")));
  }

  private static Optional<PermittivityCurve> curve(SettingsNode node) {
    if (node.absent()) {
      return Optional.empty();
    }
    node.allow("curve", "bulk_density", "porosity");
    String name = node.at("curve").choice(CURVES, Function.identity(), CURVES[0]);
    double density = node.at("bulk_density").number(Double.NaN);
    double porosity = node.at("porosity").number(Double.NaN);
    if (density < 0.1 || density > 2.65) {
      node.problem("bulk_density must lie between 0.1 and 2.65 g/cm³, was " + density);
      return Optional.empty();
    }
    if (porosity < 0.05 || porosity > 0.98) {
      node.problem("porosity is a share, from 0.05 to 0.98, was " + porosity);
      return Optional.empty();
    }
    Optional<PermittivityCurve> curve = PermittivityCurve.named(name, density, porosity);
    if (curve.isEmpty()) {
      node.problem("the curve " + name + " needs bulk_density or porosity");
    }
    return curve;
  }

  private static Map<String, String> columns(SettingsNode node) {
    Map<String, String> columns = new TreeMap<>();
    for (String name : node.keys()) {
      node.requireKnown(name, FieldNames.all(), "unknown name");
      node.at(name).text().ifPresent(heading -> columns.put(name, heading));
    }
    return columns;
  }

  private Bands bands(SettingsNode node) {
    if (node.absent()) {
      return Bands.NONE;
    }
    node.allow("default", "greens");
    Map<String, BandRule> greens = new TreeMap<>();
    SettingsNode own = node.at("greens");
    own.keys().forEach(id -> rule(own.at(id)).ifPresent(r -> greens.put(id, r)));
    return new Bands(rule(node.at("default")), greens, file);
  }

  private Optional<BandRule> rule(SettingsNode node) {
    if (node.absent()) {
      return Optional.empty();
    }
    node.allow("purpose", "lo_pct", "hi_pct", "fc_pct", "wp_pct", "by", "on");
    String purpose = node.at("purpose").text().orElse("");
    double low = node.at("lo_pct").number(Double.NaN);
    double high = node.at("hi_pct").number(Double.NaN);
    double fc = node.at("fc_pct").number(Double.NaN);
    double wp = node.at("wp_pct").number(Double.NaN);
    String by = node.at("by").text().orElse("");
    String on = node.at("on").text().orElse("");
    boolean limits = !Double.isNaN(low) || !Double.isNaN(high);
    if (limits) {
      if (!(low < high)) {
        node.problem(
            "a band needs lo_pct below hi_pct, were " + shown(low) + " and " + shown(high));
        return Optional.empty();
      }
      if (!Double.isNaN(fc) || !Double.isNaN(wp)) {
        node.problem("give lo_pct and hi_pct, or fc_pct and wp_pct, not both");
        return Optional.empty();
      }
      return Optional.of(new BandRule.Limits(new TargetBand(purpose, low, high, by, on)));
    }
    Optional<Purpose> known = Purpose.ofLabel(purpose);
    if (known.isEmpty()) {
      node.problem(
          "without lo_pct and hi_pct the purpose must be one of "
              + String.join(", ", Arrays.stream(Purpose.values()).map(Purpose::label).toList())
              + ", was '"
              + purpose
              + "'");
      return Optional.empty();
    }
    if (fc <= wp) {
      node.problem("fc_pct must be above wp_pct, were " + shown(fc) + " and " + shown(wp));
      return Optional.empty();
    }
    return Optional.of(new BandRule.Anchors(known.get(), fc, wp, by, on));
  }

  private MappingSettings mapping(SettingsNode root) {
    MappingSettings d = MappingSettings.defaults();
    return new MappingSettings(
        root.at("method").choice(Method.values(), Method::label, d.method()),
        root.at("cell_m").positive(d.cellM()),
        root.at("iso_step_pct").positive(d.isoStepPct()),
        root.at("measurement_sd_pct").notNegative(d.measurementSdPct()),
        root.at("duplicates")
            .choice(DuplicatePolicy.values(), SettingsReader::label, d.duplicates()),
        variogram(root.at("variogram"), d.variogram()),
        needed(root.at("needed"), d.needed()),
        UncertaintyReader.uncertainty(root.at("uncertainty"), d.uncertainty()),
        UncertaintyReader.positions(root.at("positions"), d.positions()),
        WaterReader.watering(root.at("water"), d.watering()));
  }

  private VariogramSettings variogram(SettingsNode node, VariogramSettings d) {
    node.allow("pool", "model", "cutoff_m", "lag_m", "estimator");
    double cutoff = node.at("cutoff_m").positive(d.cutoffM());
    double lag = node.at("lag_m").positive(d.lagM());
    checkLags(node, cutoff, lag);
    return new VariogramSettings(
        node.at("pool").choice(Pooling.values(), Pooling::label, d.pooling()),
        Optional.of(node.at("model").choice(MODELS, Function.identity(), AUTO))
            .filter(m -> !m.equals(AUTO))
            .map(SettingsReader::shape),
        cutoff,
        lag,
        node.at("estimator").choice(Estimator.values(), SettingsReader::label, d.estimator()));
  }

  private static Shape shape(String label) {
    return Arrays.stream(Shape.values())
        .filter(s -> label(s).equals(label))
        .findFirst()
        .orElseThrow();
  }

  private static void checkLags(SettingsNode node, double cutoff, double lag) {
    if (lag > cutoff) {
      node.problem("lag_m must not be above cutoff_m, were " + lag + " and " + cutoff);
    } else if (cutoff / lag > MOST_LAGS) {
      node.problem(
          "lag_m makes more than "
              + MOST_LAGS
              + " classes up to cutoff_m, were "
              + lag
              + " and "
              + cutoff
              + "; use a wider lag");
    } else if (lag < NARROWEST_LAG_M) {
      node.at("lag_m").problem("expected " + NARROWEST_LAG_M + " m or more, was " + lag);
    }
  }

  private Needed needed(SettingsNode node, Needed d) {
    node.allow("map", "full", "own_variogram", "pool");
    return new Needed(
        node.at("map").count(d.map()),
        node.at("full").count(d.full()),
        node.at("own_variogram").count(d.ownVariogram()),
        node.at("pool").count(d.pool()));
  }

  /** An enum constant as it is typed: KEEP_FIRST is keep-first. */
  public static String label(Enum<?> constant) {
    return constant.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  private static String shown(double value) {
    return Double.isNaN(value) ? "nothing" : Double.toString(value);
  }
}
