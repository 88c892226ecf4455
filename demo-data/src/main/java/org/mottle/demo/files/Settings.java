package org.mottle.demo.files;

/** The settings files: the agronomist's bands for play and for the day after rain. */
final class Settings {

  private Settings() {}

  /** Bands for play, from field capacity and wilt onset of each build. */
  static String play() {
    return """
        # Ostrevane Heath (invented): bands for play, between the site's own anchors.
        # G7 is the old soil green; its anchors are its own.
        bands:
          default: {purpose: ball roll, fc_pct: 26, wp_pct: 10, by: site agronomist, on: 2025-05-01}
          greens:
            "G7": {purpose: ball roll, fc_pct: 33, wp_pct: 15, by: site agronomist, on: 2025-05-01}
        """;
  }

  /** Limits for 24 to 48 hours after soaking rain: wet is above field capacity by 1 %. */
  static String afterRain() {
    return """
        # Ostrevane Heath (invented): limits for 24 to 48 hours after soaking rain.
        # Above a band for play everything is wet then; what matters is what has not drained.
        bands:
          default: {purpose: drainage, lo_pct: 18, hi_pct: 27, by: site agronomist, on: 2025-05-01}
          greens:
            "G7": {purpose: drainage, lo_pct: 24, hi_pct: 34, by: site agronomist, on: 2025-05-01}
        """;
  }

  static String about() {
    return """
        Ostrevane Heath, Vale of Merrowin: an invented course of nine greens at 48 N 15 W, in open
        ocean. Positions in metres are EPSG:32628, times are local (UTC+1), moisture is % by volume.

        greens.geojson            outlines and soil figures, RFC 7946 (degrees)
        greens_utm.geojson        the same in metres, with the older crs member
        collars, bunkers, heads   .geojson, degrees
        plan.csv                  station plans in walking order; surveys.csv names those followed
        surveys.csv               conditions, one row for each survey and green
        readings_S1.csv … S6      one survey each, without the control stations
        readings.csv              all surveys, control stations included (role ctrl)
        controls.csv              the control stations alone
        ties.csv                  fixes at heads of known place, before and after each visit
        track_S2.gpx, track_S3    the receiver's tracks, UTC
        cans.csv                  catch cans of 10 June on G1 and G5
        course.yml                bands for play
        course_after_rain.yml     limits for the day after soaking rain
        readings_S1_G3_copy.csv   a file that was handed in twice
        imported/greens_import    an outline as somebody sent it
        dem_*.asc, ortho_*.png    elevation models and orthophotos, only in the full course

        Mistakes are planted in the surveys on purpose. S2 has no positions: on G1 to G3 only the
        order is known, elsewhere the track.
        """;
  }
}
