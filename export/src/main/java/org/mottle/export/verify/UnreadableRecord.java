package org.mottle.export.verify;

import java.io.IOException;

/** The record of a delivered folder is damaged, so that nothing can be held against it. */
public final class UnreadableRecord extends IOException {
  private static final long serialVersionUID = 1;

  UnreadableRecord(String message, Throwable cause) {
    super(message, cause);
  }
}
