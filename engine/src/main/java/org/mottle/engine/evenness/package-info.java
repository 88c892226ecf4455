/** How even the moisture of a green is, with intervals. Not how evenly it is irrigated. */
package org.mottle.engine.evenness;
