/** How values look: published palettes, fixed scales. */
package org.mottle.export.style;
