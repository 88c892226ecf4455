package org.mottle.demo.files;

import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import org.mottle.demo.truth.Survey;
import org.mottle.demo.walk.Season;
import org.mottle.demo.walk.SurveyLog;

/** The files that a tool is given, by name; they hold no truth. Text is UTF-8 with plain \n. */
public final class SmallFiles {

  /** Lists all others, one name a line. */
  public static final String INDEX = "index.txt";

  private SmallFiles() {}

  /** All of them, the index included. */
  public static SortedMap<String, byte[]> of(Season season) {
    SortedMap<String, byte[]> files = new TreeMap<>();
    put(files, "about.txt", Settings.about());
    put(files, "course.yml", Settings.play());
    put(files, "course_after_rain.yml", Settings.afterRain());
    put(files, "greens.geojson", Geography.greens());
    put(files, "greens_utm.geojson", Geography.greensInMetres());
    put(files, "collars.geojson", Geography.collars());
    put(files, "bunkers.geojson", Geography.bunkers());
    put(files, "heads.geojson", Geography.heads());
    put(files, "plan.csv", Tables.plans(season));
    put(files, "surveys.csv", Tables.surveys(season));
    put(files, "ties.csv", Tables.ties(season));
    put(files, "cans.csv", Tables.cans(season));
    put(files, "readings.csv", Tables.allReadings(season));
    put(files, "controls.csv", Tables.controls(season));
    put(files, "readings_S1_G3_copy.csv", Tables.copy(season.log(Survey.S1)));
    for (SurveyLog log : season.logs()) {
      put(files, "readings_" + log.survey().name() + ".csv", Tables.readings(log));
    }
    put(files, "track_S2.gpx", TrackFile.of(season.log(Survey.S2)));
    put(files, "track_S3.gpx", TrackFile.of(season.log(Survey.S3)));
    files.put("imported/greens_import.shp", CrossedShapefile.shp());
    files.put("imported/greens_import.shx", CrossedShapefile.shx());
    files.put("imported/greens_import.dbf", CrossedShapefile.dbf());
    put(files, INDEX, String.join("\n", files.keySet()) + "\n");
    return Collections.unmodifiableSortedMap(files);
  }

  private static void put(SortedMap<String, byte[]> files, String name, String text) {
    files.put(name, text.getBytes(StandardCharsets.UTF_8));
  }
}
