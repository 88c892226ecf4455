/** What a probe shows: permittivity and moisture, rods partly in the ground, cores. */
package org.mottle.engine.moisture;
