package org.mottle.engine.survey;

/**
 * One insertion of the probe at one place.
 *
 * @param label which green, survey, station and insertion, and the row of the file
 * @param position where, in metres
 * @param moisture what was read, % by volume
 * @param protocol how it was read
 * @param role why the station is there
 * @param quality what the review said of it
 */
public record Reading(
    Label label,
    Position position,
    Moisture moisture,
    Protocol protocol,
    Role role,
    Quality quality) {

  /**
   * A reading of which only place and value are known.
   *
   * @param greenId the green
   * @param stationId the station; insertions of one station count once, as their mean
   * @param x east, m
   * @param y north, m
   * @param pct % by volume
   */
  public static Reading of(String greenId, String stationId, double x, double y, double pct) {
    return new Reading(
        new Label(greenId, "", stationId, 0, 1, 0),
        new Position(x, y, Double.NaN, "", Double.NaN),
        Moisture.raw(pct),
        Protocol.UNKNOWN,
        Role.PLAN,
        Quality.NOT_REVIEWED);
  }

  /**
   * @param greenId the green the file names; empty when it names none
   * @param surveyId the survey the file names; empty when it names none
   * @param stationId station; empty when not given
   * @param sequence order in which the readings were taken, 0 when not given
   * @param replicate 1 for the first insertion at a station
   * @param row line of the file (or number of the feature), from 1, for messages; 0 when the
   *     reading is from no file
   * @param file name of the file where several were read; empty where there is only one
   */
  public record Label(
      String greenId,
      String surveyId,
      String stationId,
      int sequence,
      int replicate,
      int row,
      String file) {

    /** Of the only file, or of none. */
    public Label(
        String greenId, String surveyId, String stationId, int sequence, int replicate, int row) {
      this(greenId, surveyId, stationId, sequence, replicate, row, "");
    }

    /** Of the file of this name, one of several. */
    public Label withFile(String name) {
      return new Label(greenId, surveyId, stationId, sequence, replicate, row, name);
    }

    public Label withGreen(String green) {
      return new Label(green, surveyId, stationId, sequence, replicate, row, file);
    }

    public Label withStation(String station) {
      return new Label(greenId, surveyId, station, sequence, replicate, row, file);
    }

    /** "row 12", or "readings_S3.csv row 12" where several files were read. */
    public String at() {
      return (file.isEmpty() ? "" : file + " ") + "row " + row;
    }
  }

  /**
   * @param x east, m
   * @param y north, m
   * @param z height, m; NaN when not known
   * @param source GNSS, plan, order, ...; empty when not recorded
   * @param sdM standard error per axis, m; NaN when not known
   */
  public record Position(double x, double y, double z, String source, double sdM) {}

  /**
   * @param rawPct as read, kept for ever
   * @param adjustedPct after the adjustments named in {@code note}; equal to the raw value when
   *     there are none
   * @param note the adjustments, in order; empty when none
   */
  public record Moisture(double rawPct, double adjustedPct, String note) {
    public static Moisture raw(double pct) {
      return new Moisture(pct, pct, "");
    }
  }

  /**
   * @param time ISO 8601 local time with offset; empty when not recorded
   * @param rodMm length of the rods, mm; NaN when not recorded
   * @param probe which probe; empty when not recorded
   * @param operator who read, initials at most; empty when not recorded
   * @param calibration curve used; empty when not recorded
   * @param soilC soil temperature, degrees Celsius; NaN when not recorded
   * @param conductivityDsM bulk electrical conductivity, dS/m; NaN when not recorded
   */
  public record Protocol(
      String time,
      double rodMm,
      String probe,
      String operator,
      String calibration,
      double soilC,
      double conductivityDsM) {
    public static final Protocol UNKNOWN =
        new Protocol("", Double.NaN, "", "", "", Double.NaN, Double.NaN);
  }

  /** Why a station is where it is. */
  public enum Role {
    PLAN("plan"),
    PAIR("pair"),
    POINT_OF_INTEREST("poi"),
    CONTROL("ctrl"),
    INFILL("infill");

    private final String code;

    Role(String code) {
      this.code = code;
    }

    /** As it stands in files. */
    public String code() {
      return code;
    }
  }

  /**
   * @param code finding of the review; empty when there is none
   * @param status ok, warn, reject; empty when not reviewed
   * @param used whether the reading goes into the map
   */
  public record Quality(String code, String status, boolean used) {
    public static final Quality NOT_REVIEWED = new Quality("", "", true);
  }

  public Reading withLabel(Label newLabel) {
    return new Reading(newLabel, position, moisture, protocol, role, quality);
  }

  public double x() {
    return position.x();
  }

  public double y() {
    return position.y();
  }

  /** The value that is mapped, % by volume. */
  public double pct() {
    return moisture.adjustedPct();
  }
}
