package org.mottle.export.verify;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** Reads a style to its end; nothing outside it is fetched. */
final class StyleReread {
  static final String QML_ROOT = "qgis";
  static final String SLD_ROOT = "StyledLayerDescriptor";

  private StyleReread() {}

  /**
   * @param root what its outermost element has to be
   * @throws IOException when it is not well-formed, or something else
   */
  static void check(String style, String root) throws IOException {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    byte[] bytes = style.getBytes(StandardCharsets.UTF_8);
    String found = "";
    try {
      XMLStreamReader xml = factory.createXMLStreamReader(new ByteArrayInputStream(bytes), "UTF-8");
      while (xml.hasNext()) {
        if (xml.next() == XMLStreamReader.START_ELEMENT && found.isEmpty()) {
          found = xml.getLocalName();
        }
      }
    } catch (XMLStreamException e) {
      int line = e.getLocation() == null ? 0 : e.getLocation().getLineNumber();
      throw new IOException("is no style: damaged in line " + line, e);
    }
    if (!found.equals(root)) {
      throw new IOException("is no style: starts with '" + found + "', not '" + root + "'");
    }
  }
}
