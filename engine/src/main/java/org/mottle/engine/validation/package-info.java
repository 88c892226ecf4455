/** Floor 3: how well a method predicts the observations it has not seen. */
package org.mottle.engine.validation;
