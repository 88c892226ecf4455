/**
 * Planning from files to files: greens in, stations out for a receiver, for any GIS, as a table,
 * and as a card to print for each green.
 */
package org.mottle.export.plan;
