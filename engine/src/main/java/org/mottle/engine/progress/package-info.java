/** Floor 0: what a long computation tells its caller; the caller can stop it. */
package org.mottle.engine.progress;
