package org.mottle.export.report;

import org.mottle.export.record.Provenance;

/**
 * A page of our own look: one file, no script, nothing fetched, black on white for print, a dark
 * green line at its head.
 */
public final class Page {
  private static final String STYLE =
      """
      @page { margin: 12mm; }
      html { font-size: 15px; }
      body { font: 1rem/1.4 sans-serif; color: #1c1c1c; max-width: 70rem; margin: 1.2rem auto;
        padding: 0 1rem; }
      h1 { font-size: 1.5rem; border-top: 6px solid #23402b; padding-top: .6rem; margin-bottom: .3rem; }
      h2 { font-size: 1.15rem; margin: 1.6rem 0 .4rem; break-after: avoid; }
      .wide { overflow-x: auto; }
      table { border-collapse: collapse; width: 100%; }
      th, td { border-bottom: 1px solid #b8b8b0; padding: .2rem .4rem; text-align: left;
        vertical-align: top; }
      thead th { border-bottom: 2px solid #23402b; font-size: .9rem; }
      tr { break-inside: avoid; }
      .num { text-align: right; }
      .small { font-size: .88rem; color: #3c3c3c; }
      .mind { border-left: 6px double #1c1c1c; padding: .2rem .8rem; margin: .8rem 0; }
      .mind p { margin: .3rem 0; }
      figure { display: inline-block; margin: .5rem 1rem .5rem 0; break-inside: avoid; max-width: 100%; }
      figure svg { max-width: 100%; height: auto; }
      figcaption { font-size: .88rem; }
      ul { margin: .2rem 0; padding-left: 1.2rem; }
      @media print {
        html { font-size: 10.5px; }
        body { margin: 0; max-width: none; padding: 0; } .wide { overflow: visible; } }
      """;

  private final StringBuilder html = new StringBuilder();

  public Page(String title) {
    html.append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>")
        .append(Markup.text(title))
        .append(
            "</title>\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">")
        .append("\n<style>\n")
        .append(STYLE)
        .append("</style></head><body>\n<h1>")
        .append(Markup.text(title))
        .append("</h1>\n<p class=\"small\">")
        .append(Markup.text(Provenance.DISCLAIMER))
        .append("</p>\n");
  }

  public Page heading(String text) {
    return raw("<h2>" + Markup.text(text) + "</h2>\n");
  }

  public Page paragraph(String text) {
    return raw("<p>" + Markup.text(text) + "</p>\n");
  }

  public Page small(String text) {
    return raw("<p class=\"small\">" + Markup.text(text) + "</p>\n");
  }

  /** Cautions, set off from the rest. */
  public Page mind(Iterable<String> lines) {
    raw("<div class=\"mind\">");
    lines.forEach(line -> raw("<p>" + Markup.text(line) + "</p>"));
    return raw("</div>\n");
  }

  /** Opens a table; its columns are named, those that begin with # hold figures. */
  public Page table(String caption, String... columns) {
    raw("<div class=\"wide\"><table aria-label=\"" + Markup.text(caption) + "\"><thead><tr>");
    for (String column : columns) {
      boolean figure = column.startsWith("#");
      raw("<th scope=\"col\"" + (figure ? " class=\"num\">" : ">"));
      raw(Markup.text(figure ? column.substring(1) : column) + "</th>");
    }
    return raw("</tr></thead><tbody>\n");
  }

  /** A row of the open table; cells that begin with # hold figures. */
  public Page row(String... cells) {
    raw("<tr>");
    for (String cell : cells) {
      boolean figure = cell.startsWith("#");
      raw(figure ? "<td class=\"num\">" : "<td>");
      raw(Markup.text(figure ? cell.substring(1) : cell) + "</td>");
    }
    return raw("</tr>\n");
  }

  public Page end() {
    return raw("</tbody></table></div>\n");
  }

  /** Drawings side by side, each with a line beneath it. */
  public Page drawing(String caption, String svg) {
    return raw(
        "<figure>" + svg + "<figcaption>" + Markup.text(caption) + "</figcaption></figure>\n");
  }

  public String done() {
    return html + "</body></html>\n";
  }

  private Page raw(String markup) {
    html.append(markup);
    return this;
  }
}
