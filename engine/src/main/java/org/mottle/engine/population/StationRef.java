package org.mottle.engine.population;

/**
 * A station of one of the surveys that were tested.
 *
 * @param survey which survey, from 0
 * @param station which of its stations, from 0
 * @param name as the surveyor calls it
 */
public record StationRef(int survey, int station, String name) {}
