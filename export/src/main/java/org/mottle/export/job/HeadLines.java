package org.mottle.export.job;

import java.util.ArrayList;
import java.util.List;
import org.mottle.engine.irrigation.HeadFinding;
import org.mottle.export.report.Words;

/** Heads to look at, one line each. */
final class HeadLines {
  private HeadLines() {}

  static List<String> of(List<HeadFinding> findings) {
    List<String> lines = new ArrayList<>();
    for (HeadFinding f : findings) {
      if (f.verdict() == HeadFinding.Verdict.LOOK || f.verdict() == HeadFinding.Verdict.CONSIDER) {
        lines.add(
            f.surveyId()
                + ", green "
                + f.greenId()
                + ", head "
                + f.head().id()
                + ": "
                + f.verdict().label()
                + ", "
                + Words.chance(f.evidence().combined())
                + " that it gives too little; "
                + f.words().next());
      }
    }
    return lines;
  }
}
