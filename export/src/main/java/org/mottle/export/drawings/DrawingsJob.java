package org.mottle.export.drawings;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import javax.imageio.ImageIO;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.localgrid.Similarity;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;
import org.mottle.export.job.InputRecord;
import org.mottle.export.job.ProgramVersion;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Nearest;
import org.mottle.export.problem.Problems;
import org.mottle.export.read.FeatureTable;
import org.mottle.export.record.Fingerprint;
import org.mottle.export.record.InputFile;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;
import org.mottle.export.write.Delivered;
import org.mottle.export.write.Delivery;
import org.mottle.export.write.Document;
import org.mottle.export.write.FileNames;
import org.mottle.export.write.Format;
import org.mottle.export.write.GeoTiffWriter;
import org.mottle.export.write.PictureFrame;
import org.mottle.export.write.RasterKind;

/**
 * A delivered folder to drawings, points to set out and pictures for imagery: verify, read, place,
 * draw, deliver. The map itself is not touched. The same folder and options give the same bytes.
 */
public final class DrawingsJob {
  private static final String SITE = "site";
  private static final String GREEN = "green";

  private final DrawingsRequest request;
  private final DeliveredMap map;
  private final Crs crs;
  private final List<String> told = new ArrayList<>();
  private final Map<String, List<Shape>> shapes = new LinkedHashMap<>();
  private final List<Document> documents = new ArrayList<>();
  private final Map<String, Geometry> greens = new LinkedHashMap<>();
  private final Map<String, Object> figures = new LinkedHashMap<>();

  private DrawingsJob(DrawingsRequest request, DeliveredMap map) {
    this.request = request;
    this.map = map;
    this.crs = map.crs();
  }

  /**
   * @throws InputRefused with every problem; nothing was written
   */
  public static DrawingsReport run(DrawingsRequest request) throws IOException {
    requireOptions(request);
    Path out = request.output().folder();
    if (out.toAbsolutePath().normalize().equals(request.from().toAbsolutePath().normalize())) {
      throw new InputRefused("--out is the delivered folder itself; name another");
    }
    Delivery delivery =
        Delivery.of(out, request.output().overwrite(), EnumSet.noneOf(Format.class))
            .withDocumentsAt(Set.of("dxf", "points.csv", "points_local.csv", "overlay", "kmz"))
            .withThreads(request.output().threads());
    delivery.check();
    return new DrawingsJob(request, DeliveredMap.open(request.from())).draw(delivery);
  }

  private static void requireOptions(DrawingsRequest request) {
    Problems problems = new Problems();
    List<String> known = CadLayer.sources();
    for (String layer : request.layers()) {
      problems.require(
          known.contains(layer),
          "--layers: '%s' is not drawn; known are %s%s",
          layer,
          String.join(", ", known),
          Nearest.to(layer, known).map(near -> "; did you mean '" + near + "'?").orElse(""));
    }
    problems.require(
        !request.imagery().applyShift() || request.imagery().marks().isPresent(),
        "--apply-shift needs --marks, the file of marks seen in the image and in the survey");
    problems.throwIfAny();
  }

  private DrawingsReport draw(Delivery delivery) throws IOException {
    if (crs.epsg() >= 32767) {
      throw new InputRefused("overlays cannot be written in " + crs + ": a GeoTIFF has no room");
    }
    read();
    Placing placing = new Placing(request, crs, box());
    told.addAll(placing.told());
    figures.put("from_run", map.runId());
    figures.putAll(placing.record());
    Provenance provenance = provenance();
    drawings(placing.local());
    overlays(placing, provenance);
    Delivered delivered =
        delivery.write(List.of(), List.of(), documents, crs, provenance, withTold());
    return new DrawingsReport(delivered, figures, told);
  }

  private Map<String, Object> withTold() {
    Map<String, Object> summary = new LinkedHashMap<>(figures);
    summary.put("told", told);
    return summary;
  }

  private void read() {
    for (String source : CadLayer.sources()) {
      boolean wanted = request.layers().isEmpty() || request.layers().contains(source);
      Optional<FeatureTable> table =
          wanted || source.equals(GREEN) ? map.layer(source) : Optional.empty();
      if (source.equals(GREEN)) {
        FeatureTable outlines =
            table.orElseThrow(() -> new InputRefused(request.from() + " holds no greens"));
        int id = outlines.columns().indexOf("green_id");
        outlines.rows().forEach(r -> greens.put((String) r.values().get(id), r.geometry()));
      }
      if (wanted && table.isPresent()) {
        shapes.put(source, Shapes.of(source, table.get()));
      } else if (request.layers().contains(source)) {
        told.add("layer " + source + " was not delivered, or has nothing in it");
      }
    }
  }

  private Envelope box() {
    Envelope box = new Envelope();
    greens.values().forEach(g -> box.expandToInclude(g.getEnvelopeInternal()));
    return box;
  }

  private Provenance provenance() throws IOException {
    List<InputFile> inputs = new ArrayList<>(List.of(InputFile.of(map.record())));
    List<String> files = new ArrayList<>();
    request.local().ifPresent(local -> files.add(local.controls()));
    request.imagery().marks().ifPresent(files::add);
    request.imagery().image().ifPresent(files::add);
    for (String file : files) {
      inputs.addAll(InputRecord.of(file));
    }
    Map<String, Object> parameters = new LinkedHashMap<>();
    parameters.put("from_run", map.runId());
    parameters.put("layers", request.layers());
    parameters.put("scale_lo_pct", request.scale().low());
    parameters.put("scale_hi_pct", request.scale().high());
    parameters.put("local_limit_m", request.local().map(l -> l.limitM()).orElse(null));
    parameters.put("local_accepted", request.local().map(l -> l.accepted()).orElse(null));
    parameters.put("apply_shift", request.imagery().applyShift());
    String runId = Fingerprint.ofText(Json.text(parameters) + inputs, 12);
    return new Provenance(
        runId, ProgramVersion.current(), map.utc(), inputs, parameters, 0, map.credit());
  }

  /** Surveys that have shapes or rasters, with a file name each. */
  private Map<String, String> surveys() {
    Set<String> ids = new TreeSet<>();
    shapes.values().forEach(all -> all.forEach(shape -> ids.add(shape.surveyId())));
    map.rasters().forEach(raster -> ids.add(String.valueOf(raster.get("surv_id"))));
    ids.remove("");
    List<String> sorted = List.copyOf(ids);
    List<String> names = FileNames.ofIds(sorted);
    Map<String, String> surveys = new LinkedHashMap<>();
    for (int i = 0; i < names.size(); i++) {
      surveys.put(sorted.get(i), "survey_" + names.get(i));
    }
    return surveys;
  }

  private void drawings(Optional<Similarity> local) {
    List<Shape> all = shapes.values().stream().flatMap(List::stream).toList();
    figures.put("points", all.stream().filter(s -> s.geometry().getDimension() != 1).count());
    Map<String, Long> counts = new TreeMap<>();
    all.forEach(s -> counts.merge(s.layer().name(), 1L, Long::sum));
    figures.put("drawn", counts);
    sheets("", all, UnaryOperator.identity(), "Coordinates: " + crs);
    documents.add(Document.text("points.csv", SettingOut.text(all, UnaryOperator.identity())));
    if (local.isPresent()) {
      UnaryOperator<Coordinate> place = local.get()::apply;
      sheets("_local", all, place, "Coordinates: grid of the site, scale " + local.get().scale());
      documents.add(Document.text("points_local.csv", SettingOut.text(all, place)));
    }
  }

  /** One drawing of the site, and one a survey with the outlines of the greens. */
  private void sheets(
      String ending, List<Shape> all, UnaryOperator<Coordinate> place, String grid) {
    List<String> remarks =
        List.of(
            "Units: metres. " + grid,
            "Mottle run " + map.runId() + ". " + Provenance.DISCLAIMER,
            "Shells run anticlockwise, holes clockwise. Locate buried services before any digging.");
    List<Shape> ofSite = all.stream().filter(s -> s.surveyId().isEmpty()).toList();
    sheet(SITE + ending, ofSite, place, remarks);
    surveys()
        .forEach(
            (survey, name) -> {
              List<Shape> own =
                  all.stream()
                      .filter(s -> s.surveyId().equals(survey) || s.layer() == CadLayer.GREEN)
                      .toList();
              if (own.stream().anyMatch(s -> s.surveyId().equals(survey))) {
                sheet(name + ending, own, place, remarks);
              }
            });
  }

  private void sheet(
      String name, List<Shape> drawn, UnaryOperator<Coordinate> place, List<String> remarks) {
    documents.add(
        new Document(
            "dxf/" + name + ".dxf",
            file ->
                Files.writeString(
                    file, DxfDrawing.text(drawn, place, remarks), StandardCharsets.US_ASCII)));
  }

  /** Pictures beside files in the image's CRS, and a KMZ a survey in degrees. */
  private void overlays(Placing placing, Provenance provenance) throws IOException {
    GeoTiffWriter tiffs = new GeoTiffWriter(placing.overlays(), provenance);
    Set<String> without = new TreeSet<>();
    Map<String, Kmz> kmzs = new LinkedHashMap<>();
    Map<String, String> names = surveys();
    int count = 0;
    for (Map<?, ?> entry : map.rasters()) {
      Optional<RasterKind> kind = DeliveredMap.kind(entry);
      Optional<Colouring> colouring = kind.flatMap(k -> Colouring.of(k, request.scale()));
      if (colouring.isEmpty()) {
        without.add(String.valueOf(entry.get("kind")));
        continue;
      }
      DeliveredMap.Found found = map.read(entry);
      Geometry green = greens.get(found.greenId());
      if (green == null) {
        throw new InputRefused("no outline of green " + found.greenId() + " was delivered");
      }
      Overlay flat =
          Overlay.of(
              found.raster(), green, colouring.get(), placing.shift(), crs, placing.overlays());
      picture(found, colouring.get(), flat, placing, tiffs);
      String survey = found.surveyId();
      kmzs.computeIfAbsent(survey, s -> new Kmz(s, placing)).add(found, green, colouring.get());
      count++;
    }
    figures.put("overlays", count);
    figures.put("overlay_crs", placing.overlays().code());
    figures.put("scale_pct", List.of(request.scale().low(), request.scale().high()));
    kmzs.forEach(
        (survey, kmz) -> {
          String name = names.getOrDefault(survey, SITE);
          documents.add(new Document("kmz/" + name + ".kmz", kmz::write));
        });
    if (!without.isEmpty()) {
      told.add("no overlays of " + String.join(", ", without) + ": they have no fixed scale");
    }
  }

  private void picture(
      DeliveredMap.Found found,
      Colouring colouring,
      Overlay overlay,
      Placing placing,
      GeoTiffWriter tiffs) {
    Map<String, String> items = new LinkedHashMap<>();
    items.put("green_id", found.greenId());
    items.put("surv_id", found.surveyId());
    items.put("kind", found.kind().code());
    items.put("meaning", KmlText.words(colouring.title(), colouring.key()));
    items.put("shift_e_m", Double.toString(placing.shift().east()));
    items.put("shift_n_m", Double.toString(placing.shift().north()));
    String stem = "overlay/" + found.file();
    documents.add(
        new Document(
            stem + ".tif",
            file -> tiffs.writePicture(file, overlay.picture(), overlay.frame(), items)));
    documents.add(new Document(stem + ".png", file -> Files.write(file, png(overlay.picture()))));
    documents.add(Document.text(stem + ".pgw", worldFile(overlay.frame())));
    documents.add(Document.text(stem + ".prj", placing.overlays().prj() + "\n"));
  }

  /** Size of a pixel and the middle of the first one. */
  private static String worldFile(PictureFrame frame) {
    double[] lines = {frame.pixelX(), 0, 0, -frame.pixelY(), frame.x(0), frame.y(0)};
    StringBuilder text = new StringBuilder();
    for (double line : lines) {
      text.append(BigDecimal.valueOf(line).toPlainString()).append('\n');
    }
    return text.toString();
  }

  private static byte[] png(BufferedImage picture) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(picture, "png", bytes);
    return bytes.toByteArray();
  }

  /** The KMZ of a survey while it is gathered. */
  private final class Kmz {
    private final Map<RasterKind, List<Found>> kinds = new TreeMap<>();
    private final Map<String, byte[]> pictures = new LinkedHashMap<>();
    private final String survey;
    private final Placing placing;

    private record Found(String green, String picture, PictureFrame frame, Colouring colours) {}

    Kmz(String survey, Placing placing) {
      this.survey = survey;
      this.placing = placing;
    }

    void add(DeliveredMap.Found found, Geometry green, Colouring colouring) throws IOException {
      Overlay overlay =
          Overlay.of(found.raster(), green, colouring, placing.shift(), crs, Crs.wgs84());
      String name = "pictures/" + found.file() + ".png";
      pictures.put(name, png(overlay.picture()));
      kinds
          .computeIfAbsent(found.kind(), k -> new ArrayList<>())
          .add(new Found(found.greenId(), name, overlay.frame(), colouring));
    }

    void write(Path file) throws IOException {
      String taken = map.taken().getOrDefault(survey, "");
      KmlText kml =
          new KmlText(
              "Moisture " + survey,
              (taken.isEmpty() ? "" : "Read from " + taken + " on; the ground has changed since. ")
                  + "Run "
                  + map.runId()
                  + ". "
                  + Provenance.DISCLAIMER);
      boolean first = true;
      for (Map.Entry<RasterKind, List<Found>> kind : kinds.entrySet()) {
        Colouring colours = kind.getValue().get(0).colours();
        String legend = "pictures/legend_" + kind.getKey().code() + ".png";
        pictures.put(legend, png(Legend.of(colours.key())));
        kml.folder(kind.getKey().code(), KmlText.words(colours.title(), colours.key()), first);
        for (Found found : kind.getValue()) {
          kml.ground(found.green(), found.picture(), found.frame(), first);
        }
        kml.legend("legend: " + colours.title(), legend, first).endFolder();
        first = false;
      }
      outlines(kml);
      KmzFile.write(file, kml.end(), pictures);
    }

    private void outlines(KmlText kml) {
      CrsTransform toDegrees = CrsTransform.between(crs, Crs.wgs84());
      kml.folder("outlines", "", true);
      greens.forEach((id, green) -> kml.outline(id, "", toDegrees.apply(moved(green))));
      shapes.getOrDefault("patch", List.of()).stream()
          .filter(s -> s.surveyId().equals(survey))
          .forEach(
              s -> kml.outline(s.label(), s.description(), toDegrees.apply(moved(s.geometry()))));
      kml.endFolder();
    }

    private Geometry moved(Geometry geometry) {
      return org.locationtech.jts.geom.util.AffineTransformation.translationInstance(
              placing.shift().east(), placing.shift().north())
          .transform(geometry);
    }
  }
}
