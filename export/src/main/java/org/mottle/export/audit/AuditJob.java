package org.mottle.export.audit;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.mottle.engine.irrigation.AreaAudit;
import org.mottle.engine.irrigation.AuditArea;
import org.mottle.engine.irrigation.CanAudit;
import org.mottle.engine.irrigation.CatchCan;
import org.mottle.engine.irrigation.Caution;
import org.mottle.engine.irrigation.Head;
import org.mottle.engine.irrigation.HeadCoverage;
import org.mottle.engine.irrigation.HeadSpacing;
import org.mottle.engine.irrigation.Missing;
import org.mottle.engine.irrigation.WaterNeed;
import org.mottle.engine.survey.Green;
import org.mottle.export.crs.Crs;
import org.mottle.export.job.InputRecord;
import org.mottle.export.job.ProgramVersion;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.read.Cans;
import org.mottle.export.read.CansReader;
import org.mottle.export.read.Greens;
import org.mottle.export.read.GreensReader;
import org.mottle.export.read.Heads;
import org.mottle.export.read.HeadsReader;
import org.mottle.export.read.InputOptions;
import org.mottle.export.record.Fingerprint;
import org.mottle.export.record.InputFile;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;
import org.mottle.export.write.Delivered;
import org.mottle.export.write.Delivery;
import org.mottle.export.write.Document;
import org.mottle.export.write.Format;

/** The audit from files to figures, and to files when a folder is named. */
public final class AuditJob {
  private static final String PAGE = "audit.html";

  private final AuditRequest request;

  public AuditJob(AuditRequest request) {
    this.request = request;
  }

  /**
   * @throws InputRefused when the input cannot be read; nothing has been written then
   * @throws IOException when a file cannot be read
   */
  public AuditReport run() throws IOException {
    Optional<Delivery> delivery = request.folder().map(this::delivery);
    delivery.ifPresent(Delivery::check);
    InputOptions options = request.site().inputOptions();
    Optional<Crs> asked = request.site().workingCrs().map(Crs::parse);
    asked.ifPresent(Crs::requireWorking);
    Optional<Greens> greens =
        request.files().greens().map(file -> GreensReader.read(file, options, asked));
    Cans cans = CansReader.read(request.files().cans(), options, greens, asked);
    Optional<Heads> heads =
        request.files().heads().map(f -> heads(f, options, greens, cans, asked));
    List<String> told = new ArrayList<>();
    greens.ifPresent(g -> told.addAll(g.notes()));
    told.addAll(cans.notes());
    heads.ifPresent(h -> told.addAll(h.notes()));
    Audited audited = audited(cans, greens, heads);
    Map<String, Object> figures = figures(audited, told);
    Optional<Delivered> delivered = Optional.empty();
    if (delivery.isPresent()) {
      Crs working =
          greens
              .map(Greens::working)
              .or(cans::working)
              .or(() -> heads.map(Heads::working))
              .or(() -> asked)
              .orElseThrow(() -> withoutCrs(cans));
      delivered =
          Optional.of(
              delivery
                  .get()
                  .write(
                      AuditRows.of(audited),
                      List.of(),
                      List.of(page(audited, told)),
                      working,
                      provenance(cans, working),
                      figures));
    }
    return new AuditReport(audited, told, figures, delivered);
  }

  private Delivery delivery(java.nio.file.Path folder) {
    return Delivery.of(
            folder,
            request.overwrite(),
            EnumSet.of(Format.GEOPACKAGE, Format.GEOJSON, Format.SHAPEFILE))
        .withDocumentsAt(Set.of(PAGE))
        .withThreads(request.threads());
  }

  private static InputRefused withoutCrs(Cans cans) {
    return new InputRefused(
        cans.source()
            + ": layers need a CRS, and neither cans nor greens nor heads name one; give --greens, or"
            + " --crs like --crs EPSG:32630, or leave out --out for the figures alone");
  }

  private static Heads heads(
      String file, InputOptions options, Optional<Greens> greens, Cans cans, Optional<Crs> asked) {
    return greens.isPresent()
        ? HeadsReader.read(file, options, greens.get())
        : HeadsReader.read(file, options, cans.working().or(() -> asked));
  }

  private static Document page(Audited audited, List<String> told) {
    String text = AuditPage.of(audited, told);
    return new Document(PAGE, file -> Files.writeString(file, text, StandardCharsets.UTF_8));
  }

  private Audited audited(Cans cans, Optional<Greens> greens, Optional<Heads> heads) {
    Map<List<String>, List<CatchCan>> groups = new LinkedHashMap<>();
    for (CatchCan can : cans.cans()) {
      groups.computeIfAbsent(List.of(can.greenId(), can.run()), k -> new ArrayList<>()).add(can);
    }
    CanAudit audit = new CanAudit(request.settings());
    List<AreaAudit> areas = new ArrayList<>();
    groups.forEach(
        (key, own) ->
            areas.add(
                audit.of(
                    new AuditArea(
                        key.get(0),
                        key.get(1),
                        own,
                        greens.flatMap(g -> green(g, key.get(0))),
                        heads.map(h -> watering(h, key.get(0))).orElse(List.of())))));
    List<HeadCoverage> coverage = new ArrayList<>();
    if (greens.isPresent() && heads.isPresent()) {
      for (Green green : greens.get().greens()) {
        List<Head> own = heads.get().of(green.id());
        if (!own.isEmpty()) {
          coverage.add(HeadCoverage.of(green, own));
        }
      }
    }
    return new Audited(areas, coverage, greens, heads, request.settings());
  }

  /** Heads that name no green water whatever there is, when the cans name none either. */
  private static List<Head> watering(Heads heads, String green) {
    return green.isEmpty() ? heads.heads() : heads.of(green);
  }

  private static Optional<Green> green(Greens greens, String id) {
    return greens.greens().stream().filter(g -> g.id().equals(id)).findFirst();
  }

  private static Map<String, Object> figures(Audited audited, List<String> told) {
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("told", told);
    figures.put("areas", audited.areas().stream().map(a -> area(a, audited)).toList());
    figures.put("cover", audited.coverage().stream().map(AuditJob::cover).toList());
    return figures;
  }

  private static Map<String, Object> area(AreaAudit a, Audited audited) {
    Map<String, Object> one = AuditRows.figures(a, audited);
    List<Map<String, Object>> missing = new ArrayList<>();
    for (Missing m : a.told().missing()) {
      Map<String, Object> line = new LinkedHashMap<>();
      line.put("figure", m.figure());
      line.put("reason", m.refusal().reason());
      line.put("remedy", m.refusal().remedy());
      missing.add(line);
    }
    one.put("missing", missing);
    one.put("cautions", a.told().cautions().stream().map(Caution::text).toList());
    return one;
  }

  private static Map<String, Object> cover(HeadCoverage c) {
    Map<String, Object> one = new LinkedHashMap<>();
    one.put("green_id", c.green().id());
    Map<String, Object> shares = new LinkedHashMap<>();
    c.shares().forEach((n, share) -> shares.put(String.valueOf(n), share));
    one.put("share_by_heads", shares);
    one.put("theo_mmh", c.meanRateMmH());
    List<Map<String, Object>> heads = new ArrayList<>();
    for (HeadSpacing s : c.spacing()) {
      Map<String, Object> head = new LinkedHashMap<>();
      head.put("head_id", s.head().id());
      head.put("near_m", s.nearestM());
      head.put("near_rad", s.perRadius());
      head.put("head_head", s.reachesHead());
      head.put("reached_n", s.reachedBy());
      heads.add(head);
    }
    one.put("heads", heads);
    return one;
  }

  private Provenance provenance(Cans cans, Crs working) throws IOException {
    List<InputFile> inputs = new ArrayList<>();
    for (String file : request.files().all()) {
      inputs.addAll(InputRecord.of(file));
    }
    Map<String, Object> parameters = new LinkedHashMap<>();
    parameters.put("columns", new java.util.TreeMap<>(request.site().columns()));
    parameters.put("low_quarter", request.settings().rule().label());
    parameters.put("replicates", request.settings().replicates());
    WaterNeed need = request.settings().need().orElse(null);
    parameters.put("et0_mm_d", need == null ? null : need.et0MmD());
    parameters.put("kc", need == null ? null : need.kc());
    parameters.put("rain_mm", need == null ? null : need.rainMm());
    String runId =
        Fingerprint.ofText(
            Json.text(inputs.stream().map(InputFile::sha256).toList())
                + Json.text(parameters)
                + request.settings().seed()
                + working.code()
                + ProgramVersion.current(),
            12);
    return new Provenance(
        runId,
        ProgramVersion.current(),
        lastRun(cans),
        inputs,
        parameters,
        request.settings().seed(),
        "");
  }

  /** Of the data, not of the clock, so that two runs are alike. */
  private static Instant lastRun(Cans cans) {
    Instant last = Instant.EPOCH;
    for (CatchCan can : cans.cans()) {
      try {
        Instant day = LocalDate.parse(can.run()).atStartOfDay(ZoneOffset.UTC).toInstant();
        last = day.isAfter(last) ? day : last;
      } catch (DateTimeParseException e) {
        continue; // the run has a name, not a day
      }
    }
    return last;
  }
}
