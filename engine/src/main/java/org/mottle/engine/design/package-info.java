/**
 * Where on a green to read: sampling designs, close pairs, replicates, a control station, the order
 * of the walk. Metres.
 */
package org.mottle.engine.design;
