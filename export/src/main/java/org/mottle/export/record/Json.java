package org.mottle.export.record;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Plain structures (maps, lists, texts, numbers, booleans, null) to JSON and back by the streaming
 * API alone; binding would cost a short command 0.1 s of class loading. NaN and the infinities have
 * no JSON and become null. Stateless.
 */
public final class Json {
  private static final JsonFactory FACTORY =
      new JsonFactoryBuilder().enable(StreamReadFeature.USE_FAST_DOUBLE_PARSER).build();

  private Json() {}

  /** For streaming by hand, with the same settings. */
  public static JsonFactory factory() {
    return FACTORY;
  }

  /** On one line. */
  public static String text(Object structure) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = FACTORY.createGenerator(text)) {
      write(json, structure);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString();
  }

  /** Reads a whole file. */
  public static Object read(Path file) throws IOException {
    try (JsonParser json = FACTORY.createParser(file.toFile())) {
      json.nextToken();
      return value(json);
    }
  }

  /** Writes a structure at the place of the generator. */
  public static void write(JsonGenerator json, Object value) throws IOException {
    if (value instanceof Map<?, ?> map) {
      json.writeStartObject();
      for (Map.Entry<?, ?> entry : map.entrySet()) {
        json.writeFieldName(String.valueOf(entry.getKey()));
        write(json, entry.getValue());
      }
      json.writeEndObject();
    } else if (value instanceof Iterable<?> items) {
      json.writeStartArray();
      for (Object item : items) {
        write(json, item);
      }
      json.writeEndArray();
    } else {
      scalar(json, value);
    }
  }

  private static void scalar(JsonGenerator json, Object value) throws IOException {
    if (value instanceof Double || value instanceof Float) {
      double number = ((Number) value).doubleValue();
      if (Double.isFinite(number)) {
        json.writeNumber(number);
      } else {
        json.writeNull();
      }
    } else if (value instanceof Number number) {
      json.writeNumber(number.toString());
    } else if (value instanceof Boolean flag) {
      json.writeBoolean(flag);
    } else if (value == null) {
      json.writeNull();
    } else {
      json.writeString(value.toString());
    }
  }

  /** The value at the parser's current token: Long or Double, String, Boolean, List, Map, null. */
  public static Object value(JsonParser json) throws IOException {
    JsonToken token = json.currentToken();
    if (token == null) {
      throw new IOException("the file ends where a value should be");
    }
    return switch (token) {
      case START_OBJECT -> object(json);
      case START_ARRAY -> array(json);
      case VALUE_STRING -> json.getText();
      case VALUE_NUMBER_INT -> json.getLongValue();
      case VALUE_NUMBER_FLOAT -> json.getDoubleValue();
      case VALUE_TRUE -> Boolean.TRUE;
      case VALUE_FALSE -> Boolean.FALSE;
      case VALUE_NULL -> null;
      default -> throw new IOException("a value cannot start with " + token);
    };
  }

  private static Map<String, Object> object(JsonParser json) throws IOException {
    Map<String, Object> map = new LinkedHashMap<>();
    while (json.nextToken() == JsonToken.FIELD_NAME) {
      String name = json.currentName();
      json.nextToken();
      map.put(name, value(json));
    }
    return map;
  }

  private static List<Object> array(JsonParser json) throws IOException {
    List<Object> list = new ArrayList<>();
    while (json.nextToken() != JsonToken.END_ARRAY) {
      list.add(value(json));
    }
    return list;
  }
}
