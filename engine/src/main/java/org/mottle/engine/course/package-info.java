/**
 * What is done with the maps of a course: which green first, where to hand water, how greens
 * compare.
 */
package org.mottle.engine.course;
