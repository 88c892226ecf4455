package org.mottle.engine.drainage;

import java.util.List;
import org.mottle.engine.survey.WaterHistory;

/**
 * What is known of a wet place. Every figure may be NaN: not known. What is not known counts
 * neither for nor against, and is listed.
 *
 * @param surveys the place in each survey, in any order
 * @param drying how it dries
 * @param terrain how it lies
 * @param profile what is below, and its edge
 * @param pipes what is laid near it
 * @param shaded chance that it is shaded enough to draw less water, 0 to 1
 */
public record Indicators(
    List<SeenWet> surveys,
    Drying drying,
    Terrain terrain,
    Profile profile,
    Pipes pipes,
    double shaded) {
  /** Nothing known. */
  public static final Indicators UNKNOWN =
      new Indicators(
          List.of(), Drying.UNKNOWN, Terrain.UNKNOWN, Profile.UNKNOWN, Pipes.UNKNOWN, Double.NaN);

  /**
   * The place in a survey.
   *
   * @param surveyId which
   * @param history the water before it
   * @param hours since that water; NaN when not known
   * @param hot in days of heat
   * @param wet chance that the place is above the band, mean over its area
   */
  public record SeenWet(
      String surveyId, WaterHistory history, double hours, boolean hot, double wet) {}

  /**
   * Between two surveys without water.
   *
   * @param ratio R: how fast the place dries over what the turf draws from it, k / k_ET
   * @param ratioSd its standard deviation
   * @param gapGrowthPct by how much the place gained on the rest of the green, % by volume: above 0
   *     where it dries less
   * @param gapSdPct its standard deviation
   */
  public record Drying(double ratio, double ratioSd, double gapGrowthPct, double gapSdPct) {
    public static final Drying UNKNOWN = new Drying(Double.NaN, Double.NaN, Double.NaN, Double.NaN);
  }

  /**
   * @param hollow the closed hollow in it
   * @param gathering wetness index
   * @param setting where on the green
   */
  public record Terrain(Hollow hollow, Gathering gathering, Setting setting) {
    public static final Terrain UNKNOWN =
        new Terrain(Hollow.UNKNOWN, Gathering.UNKNOWN, Setting.UNKNOWN);
  }

  /**
   * @param share of the place that lies in a closed hollow, 0 to 1
   * @param fillMm depth of the hollow under the place, mm; 0 where there is none
   * @param noiseMm standard deviation of a level relative to its neighbours, mm
   */
  public record Hollow(double share, double fillMm, double noiseMm) {
    public static final Hollow UNKNOWN = new Hollow(Double.NaN, Double.NaN, Double.NaN);
  }

  /**
   * @param percentile of the wetness index of the place within the green, 0 to 1
   * @param pValue that the green is wetter where the index is higher, against realisations: {@link
   *     TerrainAssociation}
   */
  public record Gathering(double percentile, double pValue) {
    public static final Gathering UNKNOWN = new Gathering(Double.NaN, Double.NaN);
  }

  /**
   * Chances, 0 to 1.
   *
   * @param uphillEdge that it lies at the uphill edge of the green
   * @param surroundsDrainIn that surface water of the surrounds runs to it
   * @param lowEnd that it lies at the low end of the green
   */
  public record Setting(double uphillEdge, double surroundsDrainIn, double lowEnd) {
    public static final Setting UNKNOWN = new Setting(Double.NaN, Double.NaN, Double.NaN);
  }

  /**
   * @param shortMinusLongPct moisture by short rods minus that by long rods at the same stations, %
   *     by volume
   * @param sdPct its standard deviation
   * @param slowInfiltration chance that water goes in more slowly than beside it
   * @param diffuse chance that it has no clear edge
   */
  public record Profile(
      double shortMinusLongPct, double sdPct, double slowInfiltration, double diffuse) {
    public static final Profile UNKNOWN =
        new Profile(Double.NaN, Double.NaN, Double.NaN, Double.NaN);
  }

  /**
   * @param headM distance to the nearest head or pressure pipe, m; 0 where one lies in the place
   * @param sdM its standard deviation, of both positions
   * @param alongDrain chance that it lies along a drain, or at its outlet end
   */
  public record Pipes(double headM, double sdM, double alongDrain) {
    public static final Pipes UNKNOWN = new Pipes(Double.NaN, Double.NaN, Double.NaN);
  }

  public Indicators {
    surveys = List.copyOf(surveys);
  }

  public Indicators with(List<SeenWet> newSurveys) {
    return new Indicators(newSurveys, drying, terrain, profile, pipes, shaded);
  }

  public Indicators with(Drying newDrying) {
    return new Indicators(surveys, newDrying, terrain, profile, pipes, shaded);
  }

  public Indicators with(Terrain newTerrain) {
    return new Indicators(surveys, drying, newTerrain, profile, pipes, shaded);
  }

  public Indicators with(Profile newProfile) {
    return new Indicators(surveys, drying, terrain, newProfile, pipes, shaded);
  }

  public Indicators with(Pipes newPipes) {
    return new Indicators(surveys, drying, terrain, profile, newPipes, shaded);
  }

  public Indicators withShaded(double newShaded) {
    return new Indicators(surveys, drying, terrain, profile, pipes, newShaded);
  }
}
