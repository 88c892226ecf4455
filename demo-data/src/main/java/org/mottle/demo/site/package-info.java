/**
 * Floor 1: the invented ground. Greens, collars, bunkers and heads in metres from the centre of
 * each green (x east, y north), the course's place in EPSG:32628, and the way to degrees.
 */
package org.mottle.demo.site;
