package org.mottle.export.style;

import java.io.StringWriter;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** XML in the order it is called; every text escaped. One element a line, without indent. */
final class Xml {
  private final StringWriter text = new StringWriter();
  private final XMLStreamWriter xml;

  Xml() {
    try {
      xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
    } catch (XMLStreamException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Prologue in UTF-8. */
  Xml prologue() {
    text.write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    return this;
  }

  /** A document type without subset. */
  Xml doctype(String line) {
    text.write(line + "\n");
    return this;
  }

  /** Starts an element. */
  Xml open(String name, Object... attributes) {
    return call(
        () -> {
          xml.writeStartElement(name);
          attributes(attributes);
        });
  }

  /** An element without content. */
  Xml empty(String name, Object... attributes) {
    return call(
        () -> {
          xml.writeEmptyElement(name);
          attributes(attributes);
          xml.writeCharacters("\n");
        });
  }

  /** An element with text alone. */
  Xml leaf(String name, String content, Object... attributes) {
    open(name, attributes);
    return call(() -> xml.writeCharacters(content)).close();
  }

  Xml close() {
    return call(
        () -> {
          xml.writeEndElement();
          xml.writeCharacters("\n");
        });
  }

  private void attributes(Object... pairs) throws XMLStreamException {
    for (int i = 0; i < pairs.length; i += 2) {
      xml.writeAttribute((String) pairs[i], String.valueOf(pairs[i + 1]));
    }
  }

  /** A call of the writer. */
  private interface Call {
    void run() throws XMLStreamException;
  }

  private Xml call(Call call) {
    try {
      call.run();
      return this;
    } catch (XMLStreamException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public String toString() {
    call(xml::flush);
    return text.toString();
  }
}
