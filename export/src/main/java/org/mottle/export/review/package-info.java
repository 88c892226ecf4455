/** The review of readings from files to files: layers, a table to map from, and a page to read. */
package org.mottle.export.review;
