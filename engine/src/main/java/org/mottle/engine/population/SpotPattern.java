package org.mottle.engine.population;

final class SpotPattern {}
