/** Samples: each stands by itself and is read from its {@code main} down. */
package org.mottle.samples;
