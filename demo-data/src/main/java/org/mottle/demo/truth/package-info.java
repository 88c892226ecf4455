/**
 * Floor 2: what the ground really holds. Elevation, moisture, faults, irrigation; nothing here ever
 * goes into a file that a tool reads.
 */
package org.mottle.demo.truth;
