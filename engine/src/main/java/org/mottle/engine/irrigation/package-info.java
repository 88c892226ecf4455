/** Sprinkler heads and catch cans: what water is given, how evenly, and by which head. */
package org.mottle.engine.irrigation;
