package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.mottle.engine.contour.OutlineIndex.SidePoint;

/**
 * Fits thinned lines to an outline and keeps what lies inside it. A vertex within a grain of the
 * outline moves onto it, a segment that passes within a grain of a corner of the outline goes
 * through that corner, and what runs along one side of the outline is left out: so lines meet the
 * outline in points that are no closer than about a grain to its corners, and no sliver thinner
 * than that is cut off. The outline itself is never moved.
 */
final class OutlineClipper {
  private static final int NONE = -1;

  private final OutlineIndex outline;
  private final double grain;
  private final List<SidePoint> met = new ArrayList<>();

  OutlineClipper(OutlineIndex outline, double grain) {
    this.outline = outline;
    this.grain = grain;
  }

  /**
   * A point of a line.
   *
   * @param t where on its segment it was inserted
   * @param before segment of the outline it lies on, NONE when it lies on none
   * @param after the other segment, where it lies on a corner
   */
  private record Place(double x, double y, double t, int before, int after) {
    boolean onOutline() {
      return before != NONE;
    }

    boolean sameAs(Place other) {
      return x == other.x && y == other.y;
    }

    boolean onSameSide(Place other) {
      return before == other.before
          || before == other.after
          || after == other.before
          || after == other.after;
    }
  }

  /** The parts of a line inside the outline, added to {@code inside}. */
  void clip(Chain chain, List<Chain> inside) {
    List<Place> places = places(chain);
    int first = 0;
    while (first < places.size() && !places.get(first).onOutline()) {
      first++;
    }
    if (first == places.size()) {
      keep(places, chain.closed(), inside);
      return;
    }
    if (chain.closed()) {
      places = rotated(places, first);
    }
    List<Place> part = new ArrayList<>();
    for (Place place : places) {
      part.add(place);
      if (place.onOutline()) {
        keep(part, false, inside);
        part.clear();
        part.add(place);
      }
    }
    keep(part, false, inside);
  }

  /** A closed line begun at one of its points and led back to it. */
  private static List<Place> rotated(List<Place> places, int first) {
    List<Place> turned = new ArrayList<>(places.subList(first, places.size()));
    turned.addAll(places.subList(0, first));
    if (!places.get(first).sameAs(turned.get(turned.size() - 1)) || turned.size() == 1) {
      turned.add(places.get(first));
    }
    return turned;
  }

  private void keep(List<Place> part, boolean closed, List<Chain> inside) {
    int n = part.size();
    if (n < 2) {
      return;
    }
    Place a = part.get(0);
    Place b = part.get(1);
    Place last = part.get(n - 1);
    Chain line = chain(part, closed);
    boolean onOneSide = a.onOutline() && last.onOutline() && a.onSameSide(last);
    if (onOneSide && line.isSliver(grain)) {
      return;
    }
    double x = n == 2 ? 0.5 * (a.x + b.x) : b.x;
    double y = n == 2 ? 0.5 * (a.y + b.y) : b.y;
    if (outline.contains(x, y)) {
      inside.add(line);
      remember(a);
      remember(last);
    }
  }

  /** The points on the sides of the outline where lines kept so far end. */
  List<SidePoint> met() {
    return met;
  }

  private void remember(Place end) {
    if (end.onOutline() && end.before == end.after) {
      int s = end.before;
      int e = outline.next(s);
      double t =
          Segments.nearest(end.x, end.y, outline.x(s), outline.y(s), outline.x(e), outline.y(e));
      met.add(new SidePoint(s, t, end.x, end.y));
    }
  }

  private static Chain chain(List<Place> part, boolean closed) {
    Chain.Builder points = new Chain.Builder();
    for (Place place : part) {
      points.add(place.x, place.y);
    }
    return points.build(closed);
  }

  private List<Place> places(Chain chain) {
    int n = chain.size();
    List<Place> places = new ArrayList<>(n + 16);
    Place first = snapped(chain.x()[0], chain.y()[0]);
    Place from = first;
    places.add(first);
    for (int i = 1; i <= n; i++) {
      if (i == n && !chain.closed()) {
        break;
      }
      Place to = i == n ? first : snapped(chain.x()[i], chain.y()[i]);
      if (to.sameAs(from)) {
        continue;
      }
      for (Place between : meetings(from, to)) {
        if (!between.sameAs(places.get(places.size() - 1))) {
          places.add(between);
        }
      }
      if (i < n && !to.sameAs(places.get(places.size() - 1))) {
        places.add(to);
      }
      from = to;
    }
    return places;
  }

  /** The point itself, or the corner or else the side of the outline it comes within a grain of. */
  private Place snapped(double x, double y) {
    int count = outline.find(x - grain, y - grain, x + grain, y + grain);
    double corner = grain * grain;
    double side = grain * grain;
    int atCorner = NONE;
    int atSide = NONE;
    for (int f = 0; f < count; f++) {
      int s = outline.found(f);
      int e = outline.next(s);
      double toStart = squared(x - outline.x(s), y - outline.y(s));
      double toEnd = squared(x - outline.x(e), y - outline.y(e));
      if (Math.min(toStart, toEnd) < corner) {
        corner = Math.min(toStart, toEnd);
        atCorner = toStart <= toEnd ? s : e;
      }
      double toSide = distanceSquared(x, y, s);
      if (toSide < side || toSide == side && s < atSide) {
        side = toSide;
        atSide = s;
      }
    }
    if (atCorner != NONE) {
      return corner(atCorner, 0);
    }
    return atSide == NONE ? new Place(x, y, 0, NONE, NONE) : onSide(x, y, atSide);
  }

  private Place onSide(double x, double y, int s) {
    int e = outline.next(s);
    double t = Segments.nearest(x, y, outline.x(s), outline.y(s), outline.x(e), outline.y(e));
    double px = Frame.fine(outline.x(s) + t * (outline.x(e) - outline.x(s)));
    double py = Frame.fine(outline.y(s) + t * (outline.y(e) - outline.y(s)));
    int near = cornerNear(px, py, s);
    return near == NONE ? new Place(px, py, 0, s, s) : corner(near, 0);
  }

  private int cornerNear(double x, double y, int s) {
    int e = outline.next(s);
    double toStart = squared(x - outline.x(s), y - outline.y(s));
    double toEnd = squared(x - outline.x(e), y - outline.y(e));
    if (Math.min(toStart, toEnd) >= grain * grain) {
      return NONE;
    }
    return toStart <= toEnd ? s : e;
  }

  private Place corner(int vertex, double t) {
    return new Place(outline.x(vertex), outline.y(vertex), t, vertex, outline.previous(vertex));
  }

  /** Where a segment of a line meets the outline between its ends, in order. */
  private List<Place> meetings(Place a, Place b) {
    int count =
        outline.find(
            Math.min(a.x, b.x) - grain,
            Math.min(a.y, b.y) - grain,
            Math.max(a.x, b.x) + grain,
            Math.max(a.y, b.y) + grain);
    if (count == 0) {
      return List.of();
    }
    List<Place> between = new ArrayList<>();
    for (int f = 0; f < count; f++) {
      int s = outline.found(f);
      if (passes(s, a, b)) {
        if (far(outline.x(s), outline.y(s), a) && far(outline.x(s), outline.y(s), b)) {
          between.add(corner(s, nearest(s, a, b)));
        }
      } else if (!passes(outline.next(s), a, b)) {
        addCrossing(s, a, b, between);
      }
    }
    if (between.size() > 1) {
      between.sort(Comparator.comparingDouble(Place::t).thenComparingInt(Place::before));
    }
    return between;
  }

  private void addCrossing(int s, Place a, Place b, List<Place> between) {
    int e = outline.next(s);
    double ofA = side(a.x, a.y, s, e);
    double ofB = side(b.x, b.y, s, e);
    if (ofA > 0 == ofB > 0) {
      return;
    }
    double fromStart = (b.x - a.x) * (outline.y(s) - a.y) - (b.y - a.y) * (outline.x(s) - a.x);
    double fromEnd = (b.x - a.x) * (outline.y(e) - a.y) - (b.y - a.y) * (outline.x(e) - a.x);
    if (fromStart > 0 == fromEnd > 0) {
      return;
    }
    double u = fromStart / (fromStart - fromEnd);
    double x = Frame.fine(outline.x(s) + u * (outline.x(e) - outline.x(s)));
    double y = Frame.fine(outline.y(s) + u * (outline.y(e) - outline.y(s)));
    if (far(x, y, a) && far(x, y, b)) {
      double t = ofA / (ofA - ofB);
      int near = cornerNear(x, y, s);
      between.add(near == NONE ? new Place(x, y, t, s, s) : corner(near, t));
    }
  }

  /** Crossings next to an end that lies on the outline are that end. */
  private boolean far(double x, double y, Place end) {
    return !end.onOutline() || squared(x - end.x, y - end.y) >= grain * grain;
  }

  private boolean passes(int vertex, Place a, Place b) {
    return Segments.distanceSquared(outline.x(vertex), outline.y(vertex), a.x, a.y, b.x, b.y)
        < grain * grain;
  }

  private double nearest(int vertex, Place a, Place b) {
    return Segments.nearest(outline.x(vertex), outline.y(vertex), a.x, a.y, b.x, b.y);
  }

  private double side(double x, double y, int s, int e) {
    return (outline.x(e) - outline.x(s)) * (y - outline.y(s))
        - (outline.y(e) - outline.y(s)) * (x - outline.x(s));
  }

  private double distanceSquared(double x, double y, int s) {
    int e = outline.next(s);
    return Segments.distanceSquared(x, y, outline.x(s), outline.y(s), outline.x(e), outline.y(e));
  }

  private static double squared(double dx, double dy) {
    return dx * dx + dy * dy;
  }
}
