package org.mottle.engine.irrigation;

/**
 * How a head stands to the others of its green.
 *
 * @param head which
 * @param nearestM to the nearest other head, m; NaN when it is alone
 * @param perRadius that over the head's radius; 1 or less is head to head by distance
 * @param reachesHead whether another head lies within its radius and arc
 * @param reachedBy number of other heads within whose radius and arc it lies
 */
public record HeadSpacing(
    Head head, double nearestM, double perRadius, boolean reachesHead, int reachedBy) {}
