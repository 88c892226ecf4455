/** A picture of delivered maps: the layers read back, then drawn with the JDK alone. */
package org.mottle.samples.picture;
