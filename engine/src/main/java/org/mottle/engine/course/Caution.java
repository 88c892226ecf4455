package org.mottle.engine.course;

/** What to mind at a place before it is watered. */
public enum Caution {
  REPELLENT(
      "perhaps water-repellent: adding water alone may not rewet it; test a core with drops, do not"
          + " refill it by volume"),
  LOOK_FIRST("not sure that there is such a place: look and read again before watering"),
  SIZE_UNKNOWN("seen at a station, its size is not known: read round it a metre apart"),
  OLD("the readings are more than a day old: read again before watering"),
  HEAT(
      "hot days: what was read changes by the hour; water early, on no map older than a day, and read"
          + " again after 30 to 60 minutes"),
  JUST_WATERED("read within 6 hours of water: some of it was still on its way down"),
  SEVERAL_PASSES("wants more than one pass: read again after 30 to 60 minutes before the next"),
  BELOW_THE_RODS("the roots reach below the rods: what lies deeper was not read"),
  NO_FIELD_CAPACITY("field capacity is not recorded: nothing keeps the water from running through"),
  INDICATIVE("the readings are indicative only (their grade, or too few)");

  private final String words;

  Caution(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
