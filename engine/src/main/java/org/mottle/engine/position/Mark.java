package org.mottle.engine.position;

/**
 * A thing whose place is known: a head, a corner.
 *
 * @param id as the site numbers it
 * @param greenId the green it belongs to; empty when to none
 * @param x east, m
 * @param y north, m
 */
public record Mark(String id, String greenId, double x, double y) {}
