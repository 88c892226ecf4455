package org.mottle.demo.walk;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.mottle.demo.random.Stream;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.Fault;
import org.mottle.demo.truth.Lattice;
import org.mottle.demo.walk.Station.Role;

/**
 * The station plans of the course. All stations lie at least 1 m inside the green and on nodes of
 * the lattice, so that a station of a line stands up to 0.18 m beside it.
 */
final class Designs {

  private static final double INSET_M = 1.0;
  private static final double PAIR_M = 0.5;

  private final long seed;
  private final GreenSite green;
  private final List<Point> inner;

  Designs(long seed, GreenSite green) {
    this.seed = seed;
    this.green = green;
    this.inner = green.cells(0.5).stream().filter(this::allowed).toList();
  }

  /** 16 stations by spatial coverage and 2 close pairs: the plan of nearly every visit. */
  StationPlan base() {
    Stream stream = stream("base plan");
    return plan("base", WalkOrder.of(withPairs(Coverage.of(inner, 16, stream), stream)));
  }

  /** 16 stations on a W over the long side of the smallest rectangle, and 2 close pairs. */
  StationPlan zigzag() {
    Frame frame = Frame.smallest(green.ring());
    List<Point> line = new ArrayList<>();
    for (int leg = 0; leg < 4; leg++) {
      for (int i = 0; i < 400; i++) {
        double t = i / 400.0;
        double v = leg % 2 == 0 ? 1 - t : t;
        Point p = frame.at((leg + t) / 4, v);
        if (allowed(p)) {
          line.add(p);
        }
      }
    }
    return plan("w", withPairs(spread(line, 16), stream("w plan")));
  }

  /** 6 stations on a transect along the long axis, 10 on a square grid, 2 close pairs. */
  StationPlan tour() {
    Frame frame = Frame.smallest(green.ring());
    List<Point> line = new ArrayList<>();
    for (int i = 0; i <= 1000; i++) {
      Point p = frame.at(i / 1000.0, 0.5);
      if (allowed(p)) {
        line.add(p);
      }
    }
    Stream stream = stream("tour plan");
    List<Point> places = new ArrayList<>(spread(line, 6));
    places.addAll(grid(frame, 10, stream));
    return plan("tour", withPairs(places, stream));
  }

  /** 12 stations, all in the front (southern) third: a walk without plan. */
  StationPlan frontThird() {
    double limit = green.ring().minY() + (green.ring().maxY() - green.ring().minY()) / 3;
    List<Point> front = inner.stream().filter(c -> c.y() < limit).toList();
    List<Station> stations = new ArrayList<>();
    Coverage.of(front, 12, stream("front")).forEach(p -> stations.add(station(Role.PLAN, p)));
    return new StationPlan("free", green.id(), WalkOrder.numbered(WalkOrder.of(stations), "F"));
  }

  /**
   * Six more places where the ground looked odd: one by one the cell farthest from every station,
   * among the cells where the green's fault stands above a quarter of its height.
   */
  List<Station> infill(StationPlan base) {
    Fault fault = Fault.of(green.id()).get(0);
    List<Point> odd = inner.stream().filter(c -> fault.shape(c.x(), c.y()) > 0.25).toList();
    List<Point> taken = new ArrayList<>(base.stations().stream().map(Station::place).toList());
    List<Station> added = new ArrayList<>();
    for (int k = 0; k < 6; k++) {
      ToDoubleFunction<Point> gap =
          c -> taken.stream().mapToDouble(c::distance).min().orElse(Double.MAX_VALUE);
      Point farthest = odd.stream().max(Comparator.comparingDouble(gap)).orElseThrow();
      taken.add(farthest);
      added.add(station(Role.INFILL, farthest));
    }
    return WalkOrder.numbered(WalkOrder.of(added), "I");
  }

  /** The centres of the dry spots, which the operator sees wilting. */
  static List<Station> pointsOfInterest() {
    List<Station> points = new ArrayList<>();
    for (Fault.DrySpots.Spot spot : Fault.DrySpots.spots()) {
      points.add(station(Role.POINT_OF_INTEREST, new Point(spot.x(), spot.y())));
    }
    return WalkOrder.numbered(WalkOrder.of(points), "P");
  }

  private boolean allowed(Point p) {
    return green.ring().depth(p.x(), p.y()) >= INSET_M;
  }

  private Stream stream(String component) {
    return Stream.of(seed, green.id(), "all", component);
  }

  private StationPlan plan(String id, List<Station> walk) {
    return new StationPlan(id, green.id(), WalkOrder.numbered(walk, ""));
  }

  /** Two of the stations, not one twice, get a partner 0.5 m away, read right after them. */
  private List<Station> withPairs(List<Point> places, Stream stream) {
    int first = stream.below(places.size());
    int second = (first + 1 + stream.below(places.size() - 1)) % places.size();
    List<Station> stations = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      stations.add(station(Role.PLAN, places.get(i)));
      if (i == first || i == second) {
        stations.add(station(Role.PAIR, partner(places.get(i))));
      }
    }
    return stations;
  }

  private Point partner(Point place) {
    Point p = new Point(Lattice.snap(place.x()), Lattice.snap(place.y()));
    return List.of(p.plus(PAIR_M, 0), p.plus(-PAIR_M, 0), p.plus(0, PAIR_M), p.plus(0, -PAIR_M))
        .stream()
        .max(Comparator.comparingDouble(q -> green.ring().depth(q.x(), q.y())))
        .orElseThrow();
  }

  private static List<Point> spread(List<Point> line, int n) {
    List<Point> places = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      places.add(line.get((int) Math.round(k * (line.size() - 1.0) / (n - 1))));
    }
    return places;
  }

  /**
   * A square grid turned to the frame, its random start tried until {@code n} places are inside.
   */
  private List<Point> grid(Frame frame, int n, Stream stream) {
    double inside = inner.size() * 0.25;
    for (int attempt = 0; attempt < 2000; attempt++) {
      double step = Math.sqrt(inside / n) * (1 - 0.1 * (attempt / 200));
      double offset = stream.uniform();
      double shift = stream.uniform();
      List<Point> places = new ArrayList<>();
      for (int i = -1; i < frame.width() / step + 1; i++) {
        int last = (int) (frame.height() / step) + 1;
        for (int k = -1; k <= last; k++) {
          int j = i % 2 == 0 ? k : last - 1 - k; // there and back
          Point p =
              frame.at((i + offset) * step / frame.width(), (j + shift) * step / frame.height());
          if (allowed(p)) {
            places.add(p);
          }
        }
      }
      if (places.size() == n) {
        return places;
      }
    }
    throw new IllegalStateException("no square grid of " + n + " stations fits " + green.id());
  }

  private static Station station(Role role, Point p) {
    return new Station("", role, new Point(Lattice.snap(p.x()), Lattice.snap(p.y())));
  }
}
