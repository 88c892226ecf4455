/** Floor 0: independent pieces of work spread over threads. */
package org.mottle.engine.parallel;
