/**
 * Files in: one class a format, all into a {@link org.mottle.export.read.FeatureTable}; above it
 * the greens, the readings and plain tables of points. Every problem of a file is collected and
 * told once; what was guessed on the way (encoding, separator, a reference system by the names of
 * columns) is told as a note.
 */
package org.mottle.export.read;
