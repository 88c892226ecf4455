package org.mottle.export.read;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * A text with the encoding it was found to be in: by its byte order mark, by the zero bytes of
 * UTF-16 without one, by being valid UTF-8; whatever else is Windows-1252, the superset of Latin-1
 * that spreadsheets write.
 *
 * @param name of the encoding, for the user
 * @param text without byte order mark
 */
record TextEncoding(String name, String text) {

  static TextEncoding detect(byte[] bytes) {
    if (startsWith(bytes, 0xEF, 0xBB, 0xBF)) {
      return of(bytes, 3, StandardCharsets.UTF_8, "UTF-8 with BOM");
    }
    if (startsWith(bytes, 0xFF, 0xFE)) {
      return of(bytes, 2, StandardCharsets.UTF_16LE, "UTF-16");
    }
    if (startsWith(bytes, 0xFE, 0xFF)) {
      return of(bytes, 2, StandardCharsets.UTF_16BE, "UTF-16");
    }
    int sample = Math.min(bytes.length, 4096) & ~1;
    int zerosEven = 0;
    int zerosOdd = 0;
    for (int i = 0; i < sample; i += 2) {
      zerosEven += bytes[i] == 0 ? 1 : 0;
      zerosOdd += bytes[i + 1] == 0 ? 1 : 0;
    }
    if (zerosOdd > sample / 5 && zerosEven == 0) {
      return of(bytes, 0, StandardCharsets.UTF_16LE, "UTF-16");
    }
    if (zerosEven > sample / 5 && zerosOdd == 0) {
      return of(bytes, 0, StandardCharsets.UTF_16BE, "UTF-16");
    }
    return isUtf8(bytes)
        ? of(bytes, 0, StandardCharsets.UTF_8, "UTF-8")
        : of(bytes, 0, Charset.forName("windows-1252"), "Windows-1252");
  }

  static boolean isUtf8(byte[] bytes) {
    try {
      StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
      return true;
    } catch (CharacterCodingException e) {
      return false;
    }
  }

  private static boolean startsWith(byte[] bytes, int... mark) {
    if (bytes.length < mark.length) {
      return false;
    }
    for (int i = 0; i < mark.length; i++) {
      if ((bytes[i] & 0xFF) != mark[i]) {
        return false;
      }
    }
    return true;
  }

  private static TextEncoding of(byte[] bytes, int skip, Charset charset, String name) {
    return new TextEncoding(name, new String(bytes, skip, bytes.length - skip, charset));
  }
}
