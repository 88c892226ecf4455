package org.mottle.export.settings;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
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
import org.mottle.engine.fit.Weighting;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.MappingSettings.Needed;
import org.mottle.engine.mapping.Method;
import org.mottle.engine.mapping.Pooling;
import org.mottle.engine.mapping.VariogramSettings;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.engine.survey.Purpose;
import org.mottle.engine.survey.TargetBand;
import org.mottle.export.problem.Problems;
import org.mottle.export.read.InputOptions.MoistureUnit;

/**
 * Reads a settings file (YAML). Unknown keys are refused with the nearest known one; every problem
 * of the file is collected before anything stops.
 */
public final class SettingsReader {

  private static final String AUTO = "auto";
  private static final String[] MODELS =
      Stream.concat(Stream.of(AUTO), Arrays.stream(Shape.values()).map(SettingsReader::label))
          .toArray(String[]::new);

  private final String file;
  private final Problems problems = new Problems();

  private SettingsReader(String file) {
    this.file = file;
  }

  /**
   * @throws org.mottle.export.problem.InputRefused with one line a problem
   * @throws IOException when the file cannot be read
   */
  public static SiteSettings read(Path path) throws IOException {
    return parse(path.getFileName().toString(), Files.readString(path));
  }

  /** As {@link #read}, from text; {@code file} is what messages call it. */
  public static SiteSettings parse(String file, String yaml) throws IOException {
    SettingsReader reader = new SettingsReader(file);
    JsonNode root;
    try {
      ObjectMapper mapper =
          new ObjectMapper(new YAMLFactory()).enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION);
      root = mapper.readTree(yaml);
    } catch (JsonProcessingException e) {
      String first = e.getOriginalMessage().lines().findFirst().orElse("");
      reader.problems.add(
          "%s, line %d: not readable as YAML (%s)",
          file, e.getLocation() == null ? 0 : e.getLocation().getLineNr(), first);
      reader.problems.throwIfAny();
      throw e;
    }
    SiteSettings settings =
        root == null || root.isMissingNode() || root.isNull()
            ? SiteSettings.DEFAULTS
            : reader.site(reader.new Node("", root));
    reader.problems.throwIfAny();
    return settings;
  }

  private SiteSettings site(Node root) {
    root.allow(
        "columns",
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
        "needed");
    Map<String, String> columns = new TreeMap<>();
    Node mapped = root.at("columns");
    mapped.forEachKey(key -> mapped.at(key).text().ifPresent(v -> columns.put(key, v)));
    return new SiteSettings(
        columns,
        bands(root.at("bands")),
        root.at("crs").text(),
        root.at("working_crs").text(),
        root.at("unit").choice(MoistureUnit.values(), SettingsReader::label, MoistureUnit.ASK),
        mapping(root));
  }

  private Bands bands(Node node) {
    node.allow("default", "greens");
    Map<String, BandRule> greens = new TreeMap<>();
    Node own = node.at("greens");
    own.forEachKey(id -> rule(own.at(id)).ifPresent(r -> greens.put(id, r)));
    return new Bands(rule(node.at("default")), greens);
  }

  private Optional<BandRule> rule(Node node) {
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

  private MappingSettings mapping(Node root) {
    MappingSettings d = MappingSettings.defaults();
    return new MappingSettings(
        root.at("method").choice(Method.values(), Method::label, d.method()),
        root.at("cell_m").positive(d.cellM()),
        root.at("iso_step_pct").positive(d.isoStepPct()),
        root.at("measurement_sd_pct").notNegative(d.measurementSdPct()),
        root.at("duplicates")
            .choice(DuplicatePolicy.values(), SettingsReader::label, d.duplicates()),
        variogram(root.at("variogram"), d.variogram()),
        needed(root.at("needed"), d.needed()));
  }

  private VariogramSettings variogram(Node node, VariogramSettings d) {
    node.allow("pool", "model", "cutoff_m", "lag_m", "estimator", "weights");
    return new VariogramSettings(
        node.at("pool").choice(Pooling.values(), Pooling::label, d.pooling()),
        Optional.of(node.at("model").choice(MODELS, Function.identity(), AUTO))
            .filter(m -> !m.equals(AUTO)),
        node.at("cutoff_m").positive(d.cutoffM()),
        node.at("lag_m").positive(d.lagM()),
        node.at("estimator").choice(Estimator.values(), SettingsReader::label, d.estimator()),
        node.at("weights").choice(Weighting.values(), SettingsReader::label, d.weighting()));
  }

  private Needed needed(Node node, Needed d) {
    node.allow("map", "full", "own_variogram", "pairs");
    return new Needed(
        (int) node.at("map").positive(d.map()),
        (int) node.at("full").positive(d.full()),
        (int) node.at("own_variogram").positive(d.ownVariogram()),
        (int) node.at("pairs").positive(d.pairs()));
  }

  /** An enum constant as it is typed: KEEP_FIRST is keep-first. */
  public static String label(Enum<?> constant) {
    return constant.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  private static String shown(double value) {
    return Double.isNaN(value) ? "nothing" : Double.toString(value);
  }

  /** A place in the file with its path, so that every message can say where. */
  private final class Node {
    private final String path;
    private final JsonNode json;

    Node(String path, JsonNode json) {
      this.path = path;
      this.json = json;
    }

    boolean absent() {
      return json.isMissingNode() || json.isNull();
    }

    void problem(String what) {
      problems.add("%s%s: %s", file, path.isEmpty() ? "" : ", " + path, what);
    }

    Node at(String key) {
      JsonNode child = json.isObject() ? json.path(key) : MissingNode.getInstance();
      return new Node(path.isEmpty() ? key : path + "." + key, child);
    }

    void allow(String... keys) {
      if (!absent() && !json.isObject()) {
        problem("expected keys and values, was '" + json.asText() + "'");
      }
      for (var names = json.fieldNames(); names.hasNext(); ) {
        String key = names.next();
        if (!Arrays.asList(keys).contains(key)) {
          problem(
              "unknown key '"
                  + key
                  + "'; "
                  + Nearest.to(key, Arrays.asList(keys))
                      .map(near -> "did you mean '" + near + "'?")
                      .orElse("known here: " + String.join(", ", keys)));
        }
      }
    }

    void forEachKey(java.util.function.Consumer<String> action) {
      if (!absent() && !json.isObject()) {
        problem("expected keys and values, was '" + json.asText() + "'");
      }
      json.fieldNames().forEachRemaining(action);
    }

    Optional<String> text() {
      if (absent()) {
        return Optional.empty();
      }
      if (!json.isValueNode()) {
        problem("expected one value, was a list or a block");
        return Optional.empty();
      }
      return Optional.of(json.asText());
    }

    double number(double otherwise) {
      if (absent()) {
        return otherwise;
      }
      if (!json.isNumber() || !Double.isFinite(json.doubleValue())) {
        problem("expected a number, was '" + json.asText() + "'");
        return otherwise;
      }
      return json.doubleValue();
    }

    double positive(double otherwise) {
      double value = number(otherwise);
      if (!absent() && !(value > 0)) {
        problem("expected a number above 0, was " + value);
        return otherwise;
      }
      return value;
    }

    double notNegative(double otherwise) {
      double value = number(otherwise);
      if (!absent() && value < 0) {
        problem("expected a number of 0 or more, was " + value);
        return otherwise;
      }
      return value;
    }

    <T> T choice(T[] choices, Function<T, String> labelOf, T otherwise) {
      Optional<String> typed = text();
      if (typed.isEmpty()) {
        return otherwise;
      }
      for (T choice : choices) {
        if (labelOf.apply(choice).equals(typed.get())) {
          return choice;
        }
      }
      problem(
          "expected one of "
              + String.join(", ", Arrays.stream(choices).map(labelOf).toList())
              + ", was '"
              + typed.get()
              + "'");
      return otherwise;
    }
  }
}
