/** Floor 1: the observations nearest to a place; ties go to the smaller row number. */
package org.mottle.engine.neighbour;
