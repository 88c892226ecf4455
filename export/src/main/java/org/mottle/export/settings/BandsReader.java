package org.mottle.export.settings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.mottle.engine.survey.Purpose;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.water.SoilTexture;

/** Reads the bands of a settings file. A rule says in one way where its limits come from. */
final class BandsReader {
  private static final String[] TEXTURE = {"sand_pct", "clay_pct", "organic_pct"};

  private BandsReader() {}

  static Bands bands(SettingsNode node, String file) {
    if (node.absent()) {
      return Bands.NONE;
    }
    node.allow("default", "greens");
    Map<String, BandRule> greens = new TreeMap<>();
    SettingsNode own = node.at("greens");
    own.keys().forEach(id -> rule(own.at(id)).ifPresent(r -> greens.put(id, r)));
    return new Bands(rule(node.at("default")), greens, file);
  }

  /** A rule as it is typed; a figure that is not given is NaN. */
  private record Typed(
      SettingsNode node, String purpose, double low, double high, double fc, double wp) {

    boolean limits() {
      return !Double.isNaN(low) || !Double.isNaN(high);
    }

    boolean anchors() {
      return !Double.isNaN(fc) || !Double.isNaN(wp);
    }

    boolean texture() {
      return !node.at("texture").absent();
    }

    boolean evenness() {
      return purpose.strip().toLowerCase(Locale.ROOT).equals(TargetBand.EVENNESS);
    }

    /** What the limits are to come from, in the words of the file. */
    List<String> ways() {
      List<String> ways = new ArrayList<>();
      if (limits()) {
        ways.add("lo_pct and hi_pct");
      }
      if (anchors()) {
        ways.add("fc_pct and wp_pct");
      }
      if (texture()) {
        ways.add("texture");
      }
      return ways;
    }
  }

  private static Optional<BandRule> rule(SettingsNode node) {
    if (node.absent()) {
      return Optional.empty();
    }
    node.allow("purpose", "lo_pct", "hi_pct", "fc_pct", "wp_pct", "texture", "by", "on");
    Typed typed =
        new Typed(
            node,
            node.at("purpose").text().orElse(""),
            node.at("lo_pct").number(Double.NaN),
            node.at("hi_pct").number(Double.NaN),
            percent(node.at("fc_pct")),
            percent(node.at("wp_pct")));
    String by = node.at("by").text().orElse("");
    String on = node.at("on").text().orElse("");
    boolean sound = checkWays(typed) & checkLimits(typed) & checkAnchors(typed);
    Optional<SoilTexture> texture = texture(node.at("texture"));
    Optional<Purpose> purpose = typed.limits() ? Optional.empty() : purpose(typed);
    if (!sound || typed.texture() && texture.isEmpty()) {
      return Optional.empty();
    }
    if (typed.limits()) {
      return Optional.of(
          new BandRule.Limits(new TargetBand(typed.purpose(), typed.low(), typed.high(), by, on)));
    }
    if (typed.evenness()) {
      return Optional.of(new BandRule.OwnMedian(by, on));
    }
    return purpose.map(
        p ->
            texture
                .<BandRule>map(t -> new BandRule.OfTexture(p, t, by, on))
                .orElseGet(() -> new BandRule.Anchors(p, typed.fc(), typed.wp(), by, on)));
  }

  private static boolean checkWays(Typed typed) {
    List<String> ways = typed.ways();
    if (typed.evenness() && !ways.isEmpty()) {
      typed
          .node()
          .problem(
              "evenness takes its limits from the green's own median; leave out "
                  + String.join(" and ", ways));
      return false;
    }
    if (ways.size() > 1) {
      typed
          .node()
          .problem(
              "give " + String.join(", or ", ways) + ", not " + (ways.size() > 2 ? "all" : "both"));
      return false;
    }
    return true;
  }

  private static boolean checkLimits(Typed typed) {
    if (typed.limits() && !(typed.low() < typed.high())) {
      typed
          .node()
          .problem(
              "a band needs lo_pct below hi_pct, were "
                  + shown(typed.low())
                  + " and "
                  + shown(typed.high()));
      return false;
    }
    return true;
  }

  private static boolean checkAnchors(Typed typed) {
    if (typed.fc() <= typed.wp()) {
      typed
          .node()
          .problem(
              "fc_pct must be above wp_pct, were "
                  + shown(typed.fc())
                  + " and "
                  + shown(typed.wp()));
      return false;
    }
    return true;
  }

  /** The purpose of a band whose limits are not given; evenness is not among them. */
  private static Optional<Purpose> purpose(Typed typed) {
    Optional<Purpose> known = Purpose.ofLabel(typed.purpose());
    if (known.isEmpty() && !typed.evenness()) {
      String all =
          Stream.concat(
                  Arrays.stream(Purpose.values()).map(Purpose::label),
                  Stream.of(TargetBand.EVENNESS))
              .reduce((a, b) -> a + ", " + b)
              .orElseThrow();
      typed
          .node()
          .problem(
              "without lo_pct and hi_pct the purpose must be one of "
                  + all
                  + ", was '"
                  + typed.purpose()
                  + "'");
    }
    return known;
  }

  private static Optional<SoilTexture> texture(SettingsNode node) {
    if (node.absent()) {
      return Optional.empty();
    }
    node.allow(TEXTURE);
    double[] pct = Arrays.stream(TEXTURE).mapToDouble(k -> node.at(k).number(Double.NaN)).toArray();
    List<String> missing = Arrays.stream(TEXTURE).filter(k -> node.at(k).absent()).toList();
    if (!missing.isEmpty()) {
      node.problem(
          "texture needs "
              + String.join(", ", missing)
              + " too, in % by weight; they stand in the"
              + " analysis of the root zone");
      return Optional.empty();
    }
    if (Arrays.stream(pct).anyMatch(Double::isNaN)) {
      return Optional.empty(); // no number: told already
    }
    List<Refusal> against = SoilTexture.against(pct[0], pct[1], pct[2]);
    against.forEach(refusal -> node.problem(refusal.toString()));
    return against.isEmpty()
        ? Optional.of(new SoilTexture(pct[0], pct[1], pct[2]))
        : Optional.empty();
  }

  private static double percent(SettingsNode node) {
    double pct = node.number(Double.NaN);
    if (pct < 0 || pct > 100) {
      node.problem("expected % by volume, 0 to 100, was " + pct);
      return Double.NaN;
    }
    return pct;
  }

  private static String shown(double value) {
    return Double.isNaN(value) ? "nothing" : Double.toString(value);
  }
}
