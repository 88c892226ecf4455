package org.mottle.engine.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.math3.random.RandomGenerator;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.plan.Positions;
import org.mottle.engine.plan.WalkOrder;
import org.mottle.engine.survey.Reading;

/**
 * Makes stations of places: the order of the walk, partners of close pairs right after the station
 * they belong to, stations read twice at even steps of the walk, numbers in the order of the walk,
 * and the control station before all. Partners stand in a random direction from stations drawn at
 * random; where none of 72 directions is on the ground and clear of others, another station is
 * drawn. The control station is the cell nearest the middle of the green that is 1 m from every
 * station, for its five holes. It is re-read at the start, each hour and at the end of a visit, so
 * it stands first and its way is not part of the walk.
 */
final class Furnishing {
  private static final int CONTROL_INSERTIONS = 5;
  private static final double CONTROL_CLEARANCE_M = 1;
  private static final int DIRECTIONS = 72;

  private final Ground ground;
  private final PlanSettings settings;
  private final List<StationPlan> earlier;
  private final RandomGenerator random;
  private final List<String> notes = new ArrayList<>();

  Furnishing(
      Ground ground, PlanSettings settings, List<StationPlan> earlier, RandomGenerator random) {
    this.ground = ground;
    this.settings = settings;
    this.earlier = earlier;
    this.random = random;
  }

  /** What could not be had; empty if all could. */
  String note() {
    return String.join("; ", notes);
  }

  List<PlannedStation> stations(
      List<Coordinate> places, Reading.Role role, boolean inOrder, boolean paired) {
    List<Coordinate> walk = inOrder ? places : walked(places);
    Map<Integer, Coordinate> partners = paired ? partners(walk) : Map.of();
    List<Coordinate> all = new ArrayList<>(walk);
    all.addAll(partners.values());
    List<PlannedStation> stations = new ArrayList<>();
    if (settings.control()) {
      stations.add(control(all));
    }
    boolean[] twice = twice(walk.size());
    int number = firstNumber();
    for (int i = 0; i < walk.size(); i++) {
      stations.add(station(number++, walk.get(i), role, twice[i] ? 2 : 1));
      if (partners.containsKey(i)) {
        stations.add(station(number++, partners.get(i), Reading.Role.PAIR, 1));
      }
    }
    return stations;
  }

  private static List<Coordinate> walked(List<Coordinate> places) {
    WalkOrder order =
        WalkOrder.anywhere(
            Positions.of(
                places.stream().mapToDouble(c -> c.x).toArray(),
                places.stream().mapToDouble(c -> c.y).toArray()));
    List<Coordinate> walk = new ArrayList<>();
    for (int step = 0; step < order.size(); step++) {
      walk.add(places.get(order.place(step)));
    }
    return walk;
  }

  private Map<Integer, Coordinate> partners(List<Coordinate> walk) {
    List<Integer> left = new ArrayList<>();
    for (int i = 0; i < walk.size(); i++) {
      left.add(i);
    }
    Map<Integer, Coordinate> partners = new TreeMap<>();
    while (partners.size() < settings.closePairs() && !left.isEmpty()) {
      int host = left.remove(random.nextInt(left.size()));
      Coordinate partner = partner(walk, host);
      if (partner != null) {
        partners.put(host, partner);
      }
    }
    if (partners.size() < settings.closePairs()) {
      notes.add("room for %d of %d close pairs".formatted(partners.size(), settings.closePairs()));
    }
    return partners;
  }

  /** A place at the distance of a pair; null if there is none. */
  private Coordinate partner(List<Coordinate> walk, int host) {
    double start = random.nextDouble() * 2 * Math.PI;
    for (int i = 0; i < DIRECTIONS; i++) {
      double angle = start + i * 2 * Math.PI / DIRECTIONS;
      Coordinate c =
          new Coordinate(
              walk.get(host).x + settings.pairM() * Math.cos(angle),
              walk.get(host).y + settings.pairM() * Math.sin(angle));
      List<Coordinate> others = new ArrayList<>(walk);
      others.remove(host);
      if (ground.holds(c) && clear(c, others, settings.pairM())) {
        return c;
      }
    }
    return null;
  }

  private static boolean clear(Coordinate c, List<Coordinate> others, double distance) {
    return others.stream().allMatch(o -> o.distance(c) >= distance);
  }

  private boolean[] twice(int n) {
    boolean[] twice = new boolean[n];
    int count = Math.min(n, settings.twice());
    for (int i = 0; i < count; i++) {
      twice[(int) ((i + 0.5) * n / count)] = true;
    }
    if (count < settings.twice()) {
      notes.add("all %d stations read twice, %d asked for".formatted(n, settings.twice()));
    }
    return twice;
  }

  /** The control station of an earlier plan, so that its readings go on; else a new one. */
  private PlannedStation control(List<Coordinate> stations) {
    for (StationPlan plan : earlier) {
      for (PlannedStation s : plan.stations()) {
        if (s.role() == Reading.Role.CONTROL) {
          return s;
        }
      }
    }
    Coordinate c = controlPlace(stations);
    return new PlannedStation("C1", c.x, c.y, Reading.Role.CONTROL, CONTROL_INSERTIONS);
  }

  private Coordinate controlPlace(List<Coordinate> stations) {
    Coordinate middle = ground.shape().getCentroid().getCoordinate();
    Coordinate best = ground.nearest(middle);
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < ground.cells(); i++) {
      Coordinate c = new Coordinate(ground.x(i), ground.y(i));
      double distance = c.distance(middle);
      if (distance < least && ground.holds(c) && clear(c, stations, CONTROL_CLEARANCE_M)) {
        least = distance;
        best = c;
      }
    }
    return best;
  }

  private PlannedStation station(int number, Coordinate c, Reading.Role role, int insertions) {
    return new PlannedStation(String.valueOf(number), c.x, c.y, role, insertions);
  }

  /** After the numbers of earlier plans, so that a number means one place. */
  private int firstNumber() {
    int highest = 0;
    for (StationPlan plan : earlier) {
      for (PlannedStation s : plan.stations()) {
        if (s.id().matches("\\d{1,6}")) {
          highest = Math.max(highest, Integer.parseInt(s.id()));
        }
      }
    }
    return highest + 1;
  }
}
