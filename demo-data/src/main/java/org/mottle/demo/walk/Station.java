package org.mottle.demo.walk;

import org.mottle.demo.site.Point;

/**
 * Where the probe goes in.
 *
 * @param id 1 to 18 in walking order; I1 to I6 infill, P1 to P6 points of interest, C1 and C2
 *     controls, F1 to F12 a walk without plan
 * @param role why it is there
 * @param place metres from the centre of the green, on a node of the lattice
 */
public record Station(String id, Role role, Point place) {

  /** Why a station is where it is. */
  public enum Role {
    PLAN("plan"),
    PAIR("pair"),
    POINT_OF_INTEREST("poi"),
    CONTROL("ctrl"),
    INFILL("infill");

    private final String code;

    Role(String code) {
      this.code = code;
    }

    /** As it stands in files. */
    public String code() {
      return code;
    }
  }

  Station named(String newId) {
    return new Station(newId, role, place);
  }
}
