/** Floor 0: greens, readings and what they were taken for. Metres, per cent by volume. */
package org.mottle.engine.survey;
