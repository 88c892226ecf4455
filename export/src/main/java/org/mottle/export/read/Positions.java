package org.mottle.export.read;

/** Whether the rows of a table must say where they are. */
enum Positions {
  /** A text file without columns for the position is refused. */
  NEEDED,
  /** Such a file is read, and needs no CRS, as long as no row has a position. */
  OPTIONAL
}
