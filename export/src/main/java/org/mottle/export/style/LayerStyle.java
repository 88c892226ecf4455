package org.mottle.export.style;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.mottle.export.schema.Field;
import org.mottle.export.schema.FieldType;
import org.mottle.export.schema.GeometryKind;
import org.mottle.export.schema.Layer;

/**
 * How a layer is drawn, told once and written in every form. All rules read one field, or there is
 * one rule for every feature.
 *
 * @param layer what is drawn
 * @param rules the legend, from its top
 * @param labelField field written beside each feature; empty when none is
 * @param source where colours and order come from, for a reader
 */
public record LayerStyle(Layer layer, List<Rule> rules, String labelField, String source) {
  public LayerStyle {
    rules = List.copyOf(rules);
    if (rules.isEmpty() || layer.isTable()) {
      throw new IllegalArgumentException("layer " + layer.name() + " has nothing to draw");
    }
    requireField(layer, labelField);
    Set<String> fields = new HashSet<>();
    Set<Condition> conditions = new HashSet<>();
    for (Rule rule : rules) {
      requireField(layer, rule.condition().readField());
      requireKind(layer, rule.symbol());
      fields.add(rule.condition().readField());
      if (!conditions.add(rule.condition())) {
        throw new IllegalArgumentException(
            "layer " + layer.name() + " has two rules for " + rule.condition());
      }
    }
    if (fields.size() > 1) {
      throw new IllegalArgumentException(
          "layer " + layer.name() + " is drawn by one field, was given " + fields);
    }
  }

  private static void requireField(Layer layer, String field) {
    if (!field.isEmpty() && layer.indexOf(field) < 0) {
      throw new IllegalArgumentException("layer " + layer.name() + " has no field " + field);
    }
  }

  private static void requireKind(Layer layer, Symbol symbol) {
    GeometryKind drawn =
        symbol instanceof PointSymbol
            ? GeometryKind.POINT
            : symbol instanceof LineSymbol ? GeometryKind.LINE : GeometryKind.AREA;
    if (drawn != layer.kind()) {
      throw new IllegalArgumentException(
          "layer " + layer.name() + " holds " + layer.kind() + ", was given a symbol of " + drawn);
    }
  }

  /** Field the classes are of; empty when every feature is drawn alike. */
  public String classField() {
    return rules.get(0).condition().readField();
  }

  /** Whether classes are intervals of a number. */
  public boolean isGraduated() {
    return rules.get(0).condition() instanceof Condition.Within;
  }

  /** The field of the label, or {@code null}. */
  Field label() {
    return labelField.isEmpty() ? null : layer.fields().get(layer.indexOf(labelField));
  }

  /** Whether the label is a number with digits behind the point. */
  boolean isLabelDecimal() {
    Field label = label();
    return label != null && label.type() == FieldType.REAL;
  }
}
