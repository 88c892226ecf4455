package org.mottle.samples.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Polygon;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.image.BufferedImage;
import java.util.List;
import org.locationtech.jts.geom.Envelope;

/** Greens side by side at one scale, north up, with what a reader needs to read them. */
public final class MapSheet {
  private static final int MARGIN = 30;
  private static final int PANEL = 610;
  private static final int ABOVE = 76;
  private static final int LEGEND = 290;

  private final List<GreenMap> maps;
  private final List<String> notes;
  private final double pixelsPerM;
  private final int panelHeight;

  /**
   * @param maps one or more
   * @param notes lines at the foot: whose ground, which CRS
   */
  public MapSheet(List<GreenMap> maps, List<String> notes) {
    this.maps = List.copyOf(maps);
    this.notes = List.copyOf(notes);
    double widest =
        maps.stream().map(MapSheet::extent).mapToDouble(Envelope::getWidth).max().orElseThrow();
    double tallest =
        maps.stream().map(MapSheet::extent).mapToDouble(Envelope::getHeight).max().orElseThrow();
    this.pixelsPerM = (PANEL - 20) / widest;
    this.panelHeight = (int) Math.ceil(tallest * pixelsPerM) + 12;
  }

  private static Envelope extent(GreenMap map) {
    return map.outline().getEnvelopeInternal();
  }

  /** Scale of the picture. */
  public double pixelsPerM() {
    return pixelsPerM;
  }

  public BufferedImage draw() {
    int width = MARGIN + maps.size() * (PANEL + MARGIN);
    int height = ABOVE + panelHeight + LEGEND;
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.setColor(Color.WHITE);
    g.fillRect(0, 0, width, height);
    for (int i = 0; i < maps.size(); i++) {
      int left = MARGIN + i * (PANEL + MARGIN);
      new Panel(g, maps.get(i), new Rectangle(left, ABOVE, PANEL, panelHeight), pixelsPerM).draw();
    }
    northArrow(g, width - MARGIN - 14, 22);
    legend(g, height - 94);
    scaleBar(g, width - MARGIN - (int) Math.round(10 * pixelsPerM), height - 86);
    for (int i = 0; i < notes.size(); i++) {
      words(g, 12, MARGIN, height - 34 + 17 * i, notes.get(i));
    }
    g.dispose();
    return image;
  }

  private void legend(Graphics2D g, int y) {
    int x = MARGIN;
    for (ZoneStyle style : ZoneStyle.values()) {
      Rectangle box = new Rectangle(x, y - 36, 44, 26);
      style.paint(g, box);
      g.setColor(Panel.INK);
      g.setStroke(new BasicStroke(1f));
      g.draw(box);
      words(g, 14, x + 52, y - 18, style.code());
      x += style.code().length() > 8 ? 165 : 115;
    }
    x = MARGIN;
    x += line(g, x, y + 13, 1f, "equal VWC, %", 170);
    x += line(g, x, y + 13, 2.4f, "limit of the band", 190);
    g.fill(new Ellipse2D.Double(x, y + 10, 6.4, 6.4));
    words(g, 14, x + 14, y + 18, "station, % VWC as read");
  }

  private static int line(Graphics2D g, int x, int y, float width, String text, int room) {
    g.setStroke(new BasicStroke(width));
    g.drawLine(x, y, x + 36, y);
    words(g, 14, x + 44, y + 5, text);
    return room;
  }

  private void scaleBar(Graphics2D g, int x, int y) {
    int half = (int) Math.round(5 * pixelsPerM);
    g.setColor(Panel.INK);
    g.setStroke(new BasicStroke(1.2f));
    g.fillRect(x, y, half, 7);
    g.drawRect(x, y, 2 * half, 7);
    words(g, 13, x - 4, y + 24, "0");
    words(g, 13, x + half - 4, y + 24, "5");
    words(g, 13, x + 2 * half - 24, y + 24, "10 m");
  }

  private static void northArrow(Graphics2D g, int x, int y) {
    g.setColor(Panel.INK);
    g.fill(new Polygon(new int[] {x, x - 9, x}, new int[] {y, y + 32, y + 25}, 3));
    g.setStroke(new BasicStroke(1.2f));
    g.draw(new Polygon(new int[] {x, x + 9, x}, new int[] {y, y + 32, y + 25}, 3));
    words(g, 14, x - 5, y + 48, "N");
  }

  private static void words(Graphics2D g, int size, int x, int y, String text) {
    g.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, size));
    g.setColor(Panel.INK);
    g.drawString(text, x, y);
  }
}
