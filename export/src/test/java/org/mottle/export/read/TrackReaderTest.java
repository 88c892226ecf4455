package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.engine.track.Track;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;

class TrackReaderTest {
  private final List<String> notes = new ArrayList<>();

  @TempDir Path folder;

  private static String point(String lat, String time) {
    return "<trkpt lat=\"%s\" lon=\"-14.9999\">%s</trkpt>"
        .formatted(lat, time.isEmpty() ? "" : "<time>" + time + "</time>");
  }

  private static String segment(String... points) {
    return "<trkseg>" + String.join("", points) + "</trkseg>";
  }

  private String file(String... segments) {
    return TestFiles.write(
        folder,
        "t.gpx",
        "<gpx version=\"1.1\" creator=\"t\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk>"
            + String.join("", segments)
            + "</trk></gpx>");
  }

  private List<Track> read(String file) {
    return TrackReader.read(file, Crs.utm(28, true), notes);
  }

  private List<String> refused(String file) {
    InputRefused e = catchThrowableOfType(InputRefused.class, () -> read(file));
    assertThat(e).as("nothing was refused").isNotNull();
    return e.lines();
  }

  @Test
  void aTrackForEachSegmentInTheWorkingCrs() {
    List<Track> tracks =
        read(
            file(
                segment(
                    point("48.00005", "2025-05-17T07:04:31Z"),
                    point("48.00006", "2025-05-17T08:04:36.5+01:00")),
                segment(point("48.00005", "2025-05-17T07:10:00Z"))));
    assertThat(tracks).extracting(Track::size).containsExactly(2, 1);
    // date -d 2025-05-17T07:04:31Z +%s
    assertThat(tracks.get(0).seconds()).containsExactly(1747465471.0, 1747465476.5);
    // gdaltransform (PROJ 9.1.1) from EPSG:4326 to EPSG:32628
    assertThat(tracks.get(0).x()[0]).isCloseTo(500007.459543133, within(1e-4));
    assertThat(tracks.get(0).y()[0]).isCloseTo(5316305.78174868, within(1e-4));
    assertThat(notes).isEmpty();
  }

  @Test
  void pointsWithoutATimeAreLeftOutAndTold() {
    List<Track> tracks =
        read(
            file(
                segment(point("48.00005", ""), point("48.00006", "2025-05-17T07:04:31Z")),
                segment(point("48.00005", ""))));
    assertThat(tracks).extracting(Track::size).containsExactly(1);
    assertThat(notes).containsExactly("t.gpx: 2 track points without a time are left out");
  }

  @Test
  void pointsOutOfOrderOfTimeArePutInOrderAndTold() {
    Track track =
        read(file(
                segment(
                    point("48.00005", "2025-05-17T07:04:31Z"),
                    point("48.00007", "2025-05-17T07:04:41Z"),
                    point("48.00006", "2025-05-17T07:04:36Z"))))
            .get(0);
    assertThat(track.seconds()).containsExactly(1747465471.0, 1747465476.0, 1747465481.0);
    assertThat(track.y()).isSorted();
    assertThat(notes)
        .containsExactly(
            "t.gpx: 1 track points are earlier than the one before them; put in order of time");
  }

  @Test
  void filesWithoutATimedTrack() {
    assertThat(refused(file(segment(point("48.00005", "")))))
        .containsExactly(
            "t.gpx holds no track with times (1 points without, 0 waypoints); record the track with times");
    String none = folder.resolve("none.gpx").toString();
    assertThat(refused(none)).containsExactly(none + ": no such file");
    assertThat(refused(TestFiles.write(folder, "x.gpx", "<gpx")))
        .singleElement()
        .asString()
        .startsWith("x.gpx is not sound GPX: ");
  }

  @Test
  void aPlaceTheWorkingCrsCannotHoldIsNamed() {
    assertThat(refused(file(segment(point("-48.00005", "2025-05-17T07:04:31Z")))))
        .singleElement()
        .asString()
        .startsWith(
            "t.gpx, track point of 2025-05-17T07:04:31Z: x -14.9999, y -48.00005 is outside the area of use of EPSG:32628");
  }
}
