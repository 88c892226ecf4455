package org.mottle.export.write;

/**
 * What the cells of a delivered raster hold: the end of its file name, how a cell is stored, and
 * the value that stands for a cell outside the green.
 */
public enum RasterKind {
  VWC("vwc", Cell.FLOAT32, "% by volume", "mean moisture"),
  SD("sd", Cell.FLOAT32, "% by volume", "standard deviation of the error of the mean"),
  P_DRY("p_dry", Cell.FLOAT32, "", "probability that the ground is below the band"),
  P_WET("p_wet", Cell.FLOAT32, "", "probability that the ground is above the band"),
  P_LOW("p_low", Cell.FLOAT32, "", "probability of a second, drier population of readings"),
  CLS(
      "cls",
      Cell.BYTE,
      "",
      "class: 1 dry, 2 probably dry, 3 in band, 4 probably wet, 5 wet, 6 cannot tell, 0 no value"),
  DVWC("dvwc", Cell.FLOAT32, "% by volume", "change of moisture, later less earlier survey"),
  DVWC_SD("dvwc_sd", Cell.FLOAT32, "% by volume", "standard deviation of the error of the change"),
  P_CHG("p_chg", Cell.FLOAT32, "", "probability that the change is beyond its limit"),
  K_PCT_D("k_pct_d", Cell.FLOAT32, "% by volume a day", "dry-down rate"),
  K_SD("k_sd", Cell.FLOAT32, "% by volume a day", "standard deviation of its error"),
  RATIO("ratio", Cell.FLOAT32, "", "dry-down rate over what evapotranspiration explains"),
  P_SLOW("p_slow", Cell.FLOAT32, "", "probability that the ground dries slower than it should"),
  WET_SHARE("wet_share", Cell.FLOAT32, "", "share of the surveys in which the ground is wet"),
  Z("z", Cell.FLOAT32, "m", "height, smoothed"),
  SLOPE("slope", Cell.FLOAT32, "%", "slope (Horn)"),
  TWI("twi", Cell.FLOAT32, "", "wetness index, ln(a / tan slope)"),
  FILL("fill", Cell.FLOAT32, "mm", "depth of water that stands before it spills");

  /** How a cell is stored. */
  public enum Cell {
    FLOAT32(4, -9999),
    BYTE(1, 255);

    private final int bytes;
    private final int noData;

    Cell(int bytes, int noData) {
      this.bytes = bytes;
      this.noData = noData;
    }

    public int bytes() {
      return bytes;
    }

    /** Declared in the file, and the only such value used. */
    public int noData() {
      return noData;
    }
  }

  private final String code;
  private final Cell cell;
  private final String unit;
  private final String meaning;

  RasterKind(String code, Cell cell, String unit, String meaning) {
    this.code = code;
    this.cell = cell;
    this.unit = unit;
    this.meaning = meaning;
  }

  public String code() {
    return code;
  }

  public Cell cell() {
    return cell;
  }

  public String unit() {
    return unit;
  }

  public String meaning() {
    return meaning;
  }
}
