/**
 * Zones that tile a green by the class of its ground against the target band, and the dry and wet
 * patches in it: with probabilities and realisations, how sure each is; without, by value alone.
 */
package org.mottle.engine.patch;
