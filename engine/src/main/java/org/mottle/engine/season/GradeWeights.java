package org.mottle.engine.season;

import java.util.Optional;
import org.mottle.engine.check.Check;
import org.mottle.engine.review.Grade;

/**
 * For how much of a survey a visit counts, by its grade, 0 to 1 (a proposal of this project, no
 * source).
 *
 * @param a grade A
 * @param b grade B
 * @param c grade C
 * @param d grade D
 * @param ungraded readings that no review has graded
 */
public record GradeWeights(double a, double b, double c, double d, double ungraded) {
  /** A 1, B 0.75, C 0.5, D 0; not graded as C. */
  public static final GradeWeights PROPOSAL = new GradeWeights(1, 0.75, 0.5, 0, 0.5);

  public GradeWeights {
    Check.within("weight of grade A", a, 0, 1, "");
    Check.within("weight of grade B", b, 0, 1, "");
    Check.within("weight of grade C", c, 0, 1, "");
    Check.within("weight of grade D", d, 0, 1, "");
    Check.within("weight without a grade", ungraded, 0, 1, "");
  }

  public double of(Optional<Grade.Letter> grade) {
    if (grade.isEmpty()) {
      return ungraded;
    }
    return switch (grade.get()) {
      case A -> a;
      case B -> b;
      case C -> c;
      case D -> d;
    };
  }
}
