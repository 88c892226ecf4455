/** The settings file of a site: columns, bands, CRS and how to map. */
package org.mottle.export.settings;
