package org.mottle.demo.walk;

/**
 * One push of the probe.
 *
 * @param visit on whose round; for a control station the visit it stands beside is null
 * @param station where
 * @param replicate 1 for the first insertion at a station
 * @param seconds from the start of the survey
 */
public record Insertion(Visit visit, Station station, int replicate, double seconds) {}
