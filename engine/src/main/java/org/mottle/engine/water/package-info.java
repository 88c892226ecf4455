/** Water in the root zone: what is there, what is wanted, what is given. */
package org.mottle.engine.water;
