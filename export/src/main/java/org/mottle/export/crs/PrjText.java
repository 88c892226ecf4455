package org.mottle.export.crs;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The text of a {@code .prj} file from a description of the first generation: the spelling that GIS
 * software expects beside a shapefile differs from the OGC's in the names of datums, methods and
 * parameters, and has no authorities in it. A name without a spelling known here is carried over
 * with its signs turned into underscores, which readers that compare parameters understand.
 */
final class PrjText {
  private static final Map<String, String> METHODS =
      Map.ofEntries(
          Map.entry("Lambert_Conformal_Conic_1SP", "Lambert_Conformal_Conic"),
          Map.entry("Lambert_Conformal_Conic_2SP", "Lambert_Conformal_Conic"),
          Map.entry("Oblique_Stereographic", "Double_Stereographic"),
          Map.entry("Albers_Conic_Equal_Area", "Albers"),
          Map.entry("Hotine_Oblique_Mercator", "Hotine_Oblique_Mercator_Azimuth_Natural_Origin"),
          Map.entry("Oblique_Mercator", "Hotine_Oblique_Mercator_Azimuth_Center"),
          Map.entry("Cassini_Soldner", "Cassini"));
  private static final Map<String, String> DATUMS =
      Map.ofEntries(
          Map.entry("osgb36", "OSGB_1936"),
          Map.entry("ordnancesurveyofgreatbritain1936", "OSGB_1936"),
          Map.entry("reseaugeodesiquefrancais1993v1", "RGF_1993"),
          Map.entry("rgf93v1", "RGF_1993"),
          Map.entry("europeandatum1950", "European_1950"),
          Map.entry("ed50", "European_1950"),
          Map.entry("northamericandatum1927", "North_American_1927"),
          Map.entry("nad27", "North_American_1927"),
          Map.entry("reseaunationalbelge1972", "Belge_1972"));

  private static final Map<String, String> NAMES =
      Map.of(
          "RGF93 v1 / Lambert-93", "RGF_1993_Lambert_93",
          "NZGD2000 / New Zealand Transverse Mercator 2000",
              "NZGD_2000_New_Zealand_Transverse_Mercator",
          "ETRS89-extended / LAEA Europe", "ETRS_1989_LAEA",
          "CH1903+ / LV95", "CH1903+_LV95",
          "BD72 / Belgian Lambert 72", "Belge_Lambert_1972");

  private PrjText() {}

  static String of(WktNode crs) {
    if (crs.keyword().equals("GEOGCS")) {
      return geographic(crs);
    }
    WktNode base = crs.child("GEOGCS").orElseThrow(() -> lacks(crs, "GEOGCS"));
    String method = crs.child("PROJECTION").orElseThrow(() -> lacks(crs, "PROJECTION")).name();
    StringBuilder text = new StringBuilder();
    text.append("PROJCS[\"").append(name(crs, base)).append("\",").append(geographic(base));
    text.append(",PROJECTION[\"").append(METHODS.getOrDefault(method, method)).append("\"]");
    for (WktNode p : parameters(crs, method)) {
      text.append(",PARAMETER[\"").append(titled(p.name())).append("\",");
      text.append(p.number(1)).append(']');
    }
    return text.append(',').append(unit(crs)).append(']').toString();
  }

  private static List<WktNode> parameters(WktNode crs, String method) {
    List<WktNode> all = crs.children("PARAMETER");
    if (method.equals("Lambert_Conformal_Conic_2SP")) {
      return all.stream().filter(p -> !p.name().equals("scale_factor")).toList();
    }
    if (!method.equals("Lambert_Conformal_Conic_1SP")) {
      return all;
    }
    // this spelling wants the single parallel named as well
    List<WktNode> both = new ArrayList<>(all);
    all.stream()
        .filter(p -> p.name().equals("latitude_of_origin"))
        .map(p -> List.of("standard_parallel_1", p.values().get(1)))
        .map(values -> new WktNode("PARAMETER", values, List.of()))
        .forEach(both::add);
    return both;
  }

  private static String geographic(WktNode crs) {
    WktNode datum = crs.child("DATUM").orElseThrow(() -> lacks(crs, "DATUM"));
    WktNode spheroid = datum.child("SPHEROID").orElseThrow(() -> lacks(crs, "SPHEROID"));
    WktNode meridian = crs.child("PRIMEM").orElseThrow(() -> lacks(crs, "PRIMEM"));
    String spelled = spelled(datum.name());
    // the one datum whose spelling has no prefix
    String prefix = spelled.equals("GDA2020") ? "" : "D_";
    return "GEOGCS[\"GCS_%s\",DATUM[\"%s%s\",SPHEROID[\"%s\",%s,%s]],PRIMEM[\"%s\",%s],UNIT[\"Degree\",0.0174532925199433]]"
        .formatted(
            spelled(crs.name().isEmpty() ? datum.name() : gcsOf(datum, crs)),
            prefix,
            spelled,
            spheroid.name().equals("WGS 84") ? "WGS_1984" : underscored(spheroid.name()),
            spheroid.number(1),
            spheroid.number(2),
            underscored(meridian.name()),
            meridian.number(1));
  }

  private static String gcsOf(WktNode datum, WktNode crs) {
    String spelled = spelled(datum.name());
    return spelled.equals(underscored(datum.name())) ? crs.name() : datum.name();
  }

  private static String spelled(String name) {
    String plain = WktNode.plain(name);
    for (GeoDatum d : GeoDatum.values()) {
      if (plain.equals(WktNode.plain(d.datumName)) || plain.equals(WktNode.plain(d.crsName))) {
        return d.prjName;
      }
    }
    if (plain.equals("worldgeodeticsystem1984")) {
      return GeoDatum.WGS_84.prjName;
    }
    return DATUMS.getOrDefault(plain, underscored(name));
  }

  /** "WGS 84 / UTM zone 30N" is WGS_1984_UTM_Zone_30N; a national grid goes by its own name. */
  private static String name(WktNode crs, WktNode base) {
    int slash = crs.name().lastIndexOf(" / ");
    String own = slash < 0 ? crs.name() : crs.name().substring(slash + 3);
    if (NAMES.containsKey(crs.name())) {
      return NAMES.get(crs.name());
    }
    if (!own.matches("(UTM|MGA) zone .*")) {
      return underscored(own);
    }
    String datum = spelled(base.child("DATUM").map(WktNode::name).orElse(base.name()));
    String prefix = datum.equals("North_American_1983") ? "NAD_1983" : datum;
    return prefix + "_" + underscored(own.replace("zone", "Zone"));
  }

  private static String unit(WktNode crs) {
    double metres = crs.child("UNIT").map(u -> u.number(1)).orElse(1.0);
    if (Math.abs(metres - 1) < 1e-12) {
      return "UNIT[\"Meter\",1.0]";
    }
    String name =
        Math.abs(metres - 1200 / 3937.0) < 1e-9 ? "Foot_US" : metres == 0.3048 ? "Foot" : "Unit";
    return "UNIT[\"" + name + "\"," + metres + "]";
  }

  private static String titled(String parameter) {
    StringBuilder text = new StringBuilder();
    for (String word : parameter.split("_")) {
      if (text.length() > 0) {
        text.append('_');
      }
      text.append(word.substring(0, 1).toUpperCase(Locale.ROOT)).append(word.substring(1));
    }
    return text.toString();
  }

  private static String underscored(String name) {
    return name.replaceAll("[^A-Za-z0-9+]+", "_").replaceAll("^_|_$", "");
  }

  private static IllegalArgumentException lacks(WktNode node, String keyword) {
    return new IllegalArgumentException("'" + node.name() + "' lacks " + keyword);
  }
}
