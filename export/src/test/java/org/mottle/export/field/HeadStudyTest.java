package org.mottle.export.field;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Point;
import org.mottle.engine.irrigation.Head;
import org.mottle.engine.irrigation.HeadEvidence;
import org.mottle.engine.irrigation.HeadFinding;
import org.mottle.engine.irrigation.SectorPrior;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.mapping.UncertaintySettings;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.review.ReviewedVisit;
import org.mottle.engine.survey.Conditions;

public class HeadStudyTest {
  @TempDir Path folder;

  public static List<Head> heads() {
    List<Head> heads = new ArrayList<>();
    for (GreenSite green : CoursePlace.greens()) {
      for (org.mottle.demo.site.Head h : org.mottle.demo.site.Head.of(green)) {
        Point p = green.world(h.place());
        heads.add(
            new Head(
                h.id(),
                green.id(),
                green.id().substring(1),
                p.x(),
                p.y(),
                org.mottle.demo.site.Head.RADIUS_M,
                h.arc().from(),
                h.arc().to(),
                org.mottle.demo.site.Head.RATE_MM_H,
                Double.NaN));
      }
    }
    return heads;
  }

  @Test
  void study() throws IOException {
    String[] range = System.getProperty("mottle.heads.seeds", "1-2").split("-");
    try (PrintStream out = new PrintStream(System.getProperty("mottle.heads.csv", "/dev/null"))) {
      out.println("seed,variant,green,survey,history,head,rank,effect,sd,prob,comb,pattern");
      for (int seed = Integer.parseInt(range[0]); seed <= Integer.parseInt(range[1]); seed++) {
        long t0 = System.nanoTime();
        List<Conditions> conditions = new ArrayList<>();
        SurveyMap map = map(seed, folder, conditions);
        long t1 = System.nanoTime();
        int variant = 0;
        for (SectorPrior prior : variants()) {
          for (HeadFinding f : HeadEvidence.of(map, heads(), conditions, prior, 2, Progress.NONE)) {
            out.printf(
                Locale.ROOT,
                "%d,%d,%s,%s,%s,%s,%d,%.3f,%.3f,%.4f,%.4f,%.4f%n",
                seed,
                variant,
                f.greenId(),
                f.surveyId(),
                f.history(),
                f.head().id(),
                f.evidence().rank(),
                f.evidence().effectPct(),
                f.evidence().effectSd(),
                f.evidence().probability(),
                f.evidence().combined(),
                f.evidence().ground());
          }
          variant++;
        }
        System.out.printf(
            "seed %d map %.1f s heads %.1f s%n",
            seed, (t1 - t0) / 1e9, (System.nanoTime() - t1) / 1e9);
      }
    }
  }

  public static SurveyMap map(long seed, Path folder, List<Conditions> conditions)
      throws IOException {
    FieldWork work = PlantedDefectsTest.work(seed, folder);
    List<GreenSurvey> subjects = new ArrayList<>();
    for (ReviewedVisit v : work.reviewed().visits()) {
      subjects.add(
          new GreenSurvey(
              v.visit().green(),
              v.visit().surveyId(),
              v.visit().readings(),
              Optional.empty(),
              v.obstacle(),
              work.errors(v)));
      v.visit().conditions().ifPresent(conditions::add);
    }
    MappingSettings d = MappingSettings.defaults();
    UncertaintySettings u = d.uncertainty();
    return new SurveyMapper(
            d.withCellM(1)
                .withUncertainty(
                    new UncertaintySettings(u.draws(), 25, u.seed(), 0, u.operatorSdPct())))
        .map(subjects, 2, Progress.NONE);
  }

  static List<SectorPrior> variants() {
    return List.of(SectorPrior.DEFAULT);
  }
}
