package org.mottle.export.model;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.mottle.engine.variogram.Anisotropy;
import org.mottle.engine.variogram.Azimuth;
import org.mottle.engine.variogram.Circular;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.Gaussian;
import org.mottle.engine.variogram.Linear;
import org.mottle.engine.variogram.Matern;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Pentaspherical;
import org.mottle.engine.variogram.Power;
import org.mottle.engine.variogram.Spherical;
import org.mottle.engine.variogram.Structure;
import org.mottle.engine.variogram.VariogramModel;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Nearest;
import org.mottle.export.problem.Problems;

/**
 * The {@code model} object: {@code {"nugget": c0, "structures": [{"type": "spherical",
 * "partial_sill": c, "range": a, "azimuth": 0, "ratio": 1}]}}. {@code range} is the parameter a of
 * each model's formula, the exponent of {@code power}; {@code matern} has a {@code kappa}.
 */
public final class ModelFile {

  /** Names of the models a file may hold. */
  public static final List<String> TYPES =
      List.of(
          "spherical",
          "exponential",
          "gaussian",
          "matern",
          "circular",
          "pentaspherical",
          "linear",
          "power");

  private static final List<String> MODEL_KEYS = List.of("nugget", "structures");

  private static final List<String> STRUCTURE_KEYS =
      List.of("type", "partial_sill", "range", "kappa", "azimuth", "ratio");

  private static final ObjectMapper JSON =
      new ObjectMapper().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

  private final String file;
  private final Problems problems = new Problems();

  private ModelFile(String file) {
    this.file = file;
  }

  /**
   * A model of a given type.
   *
   * @throws IllegalArgumentException for a parameter outside its domain
   */
  public static Optional<VariogramModel> of(String type, double c, double a, double kappa) {
    return Optional.ofNullable(
        switch (type) {
          case "spherical" -> new Spherical(c, a);
          case "exponential" -> new Exponential(c, a);
          case "gaussian" -> new Gaussian(c, a);
          case "matern" -> new Matern(c, a, kappa);
          case "circular" -> new Circular(c, a);
          case "pentaspherical" -> new Pentaspherical(c, a);
          case "linear" -> new Linear(c, a);
          case "power" -> new Power(c, a);
          default -> null;
        });
  }

  /** The JSON form of a model. */
  public static ObjectNode toJson(NestedModel model) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("nugget", model.nugget());
    var structures = json.putArray("structures");
    for (Structure s : model.structures()) {
      ObjectNode one = structures.addObject();
      one.put("type", s.model().type());
      one.put("partial_sill", s.model().partialSill());
      one.put("range", s.model().range());
      if (s.model() instanceof Matern m) {
        one.put("kappa", m.kappa());
      }
      one.put("azimuth", s.anisotropy().major().degrees());
      one.put("ratio", s.anisotropy().ratio());
    }
    return json;
  }

  /**
   * Reads a model file: either the whole of what {@code variogram} writes or its {@code model}
   * object alone.
   *
   * @throws org.mottle.export.problem.InputRefused with one line a problem
   */
  public static NestedModel read(Path path) throws IOException {
    if (!Files.isRegularFile(path)) {
      throw new InputRefused(path + ": no such file; give the file that 'variogram' wrote");
    }
    ModelFile reader = new ModelFile(path.getFileName().toString());
    JsonNode root;
    try {
      root = JSON.readTree(Files.readAllBytes(path));
    } catch (JsonProcessingException e) {
      root = null;
      reader.problems.add(
          "%s, line %d: not readable as JSON; give the file that 'variogram' wrote",
          reader.file, e.getLocation() == null ? 0 : e.getLocation().getLineNr());
    }
    NestedModel model =
        root == null
            ? null
            : reader.model(root.path("model").isMissingNode() ? root : root.path("model"));
    reader.problems.throwIfAny();
    return model;
  }

  private NestedModel model(JsonNode json) {
    if (!json.isObject() || !(json.has("nugget") || json.has("structures"))) {
      problems.add(
          "%s: no model here; expected {\"nugget\": 0.05, \"structures\": [{\"type\": \"spherical\","
              + " \"partial_sill\": 0.59, \"range\": 897}]}%s",
          file, json.isNull() ? " (the variogram found none: " + "see its fit.outcome)" : "");
      return null;
    }
    refuseUnknownKeys(json, MODEL_KEYS, file);
    double nugget = number(json, "nugget", 0, file);
    JsonNode listed = json.path("structures");
    if (!listed.isMissingNode() && !listed.isArray()) {
      problems.add("%s: structures must be a list [{...}], was %s", file, listed);
    }
    List<Structure> structures = new ArrayList<>();
    int i = 0;
    for (JsonNode s : listed) {
      structure(s, file + ", structure " + ++i).ifPresent(structures::add);
    }
    if (!problems.isEmpty()) {
      return null;
    }
    try {
      NestedModel model = new NestedModel(nugget, structures);
      problems.require(
          nugget > 0 || !structures.isEmpty(),
          "%s: the model has neither a nugget nor a structure; give it one of them",
          file);
      return model;
    } catch (IllegalArgumentException e) {
      problems.add("%s: %s", file, e.getMessage());
      return null;
    }
  }

  private void refuseUnknownKeys(JsonNode json, List<String> known, String where) {
    json.fieldNames()
        .forEachRemaining(
            key ->
                problems.require(
                    known.contains(key),
                    "%s: unknown key '%s'%s",
                    where,
                    key,
                    Nearest.to(key, known).map(n -> "; did you mean '" + n + "'?").orElse("")));
  }

  private Optional<Structure> structure(JsonNode json, String where) {
    refuseUnknownKeys(json, STRUCTURE_KEYS, where);
    String type = json.path("type").asText("");
    if (!TYPES.contains(type)) {
      problems.add(
          "%s: unknown type '%s'%s; known: %s",
          where,
          type,
          Nearest.to(type, TYPES).map(n -> ", did you mean '" + n + "'?").orElse(""),
          String.join(", ", TYPES));
      return Optional.empty();
    }
    double partialSill = number(json, "partial_sill", where);
    double range = number(json, "range", where);
    double kappa = type.equals("matern") ? number(json, "kappa", where) : Double.NaN;
    double azimuth = number(json, "azimuth", 0, where);
    double ratio = number(json, "ratio", 1, where);
    if (!problems.isEmpty()) {
      return Optional.empty();
    }
    try {
      Anisotropy anisotropy = new Anisotropy(new Azimuth(azimuth), ratio);
      return of(type, partialSill, range, kappa).map(m -> new Structure(m, anisotropy));
    } catch (IllegalArgumentException e) {
      // the engine's name of the parameter becomes that of the key
      problems.add("%s: %s", where, e.getMessage().replace("partialSill", "partial_sill"));
      return Optional.empty();
    }
  }

  /** A number that must be there. */
  private double number(JsonNode json, String key, String where) {
    problems.require(json.has(key), "%s: %s is missing", where, key);
    return number(json, key, Double.NaN, where);
  }

  private double number(JsonNode json, String key, double otherwise, String where) {
    JsonNode value = json.path(key);
    if (value.isMissingNode()) {
      return otherwise;
    }
    if (!value.isNumber()) {
      problems.add("%s: %s must be a number, was %s", where, key, value);
      return otherwise;
    }
    return value.doubleValue();
  }
}
