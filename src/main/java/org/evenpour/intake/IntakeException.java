package org.evenpour.intake;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * A file could not be used: which, where in it, why, and what mends it, in one line such as {@code
 * june.csv:1: no column mold; add …}.
 */
public final class IntakeException extends Exception {
  private static final long serialVersionUID = 1L;

  /**
   * A file, or a place in it, that cannot be used.
   *
   * @param file as the user named it
   * @param line from 1; 0 where the whole file is meant
   * @param column from 1; 0 where the whole line is meant
   * @param what is wrong
   * @param mend what the user can do
   */
  public IntakeException(String file, long line, int column, String what, String mend) {
    this(file, line, column, what, mend, null);
  }

  private IntakeException(
      String file, long line, int column, String what, String mend, @Nullable Throwable cause) {
    super(message(file, line, column, what, mend), cause);
  }

  private IntakeException(String message, Throwable cause) {
    super(CellText.oneLine(message), cause);
  }

  /** Of a file that is read elsewhere, whose message already says where, what and how to mend. */
  public static IntakeException of(IOException cause) {
    return new IntakeException(String.valueOf(cause.getMessage()), cause);
  }

  /** A file as a whole that cannot be used. */
  static IntakeException ofFile(String file, String what, String mend) {
    return new IntakeException(file, 0, 0, what, mend);
  }

  /** A file that could not be read. */
  static IntakeException unreadable(Path file, IOException cause) {
    String what;
    String mend;
    if (cause instanceof NoSuchFileException) {
      what = "there is no such file";
      mend = "check the name and the folder";
    } else if (cause instanceof AccessDeniedException) {
      what = "this file may not be read";
      mend = "ask for the right to read it, or copy it to a folder of your own";
    } else {
      what = "this file cannot be read (" + reason(cause) + ")";
      mend = "check that the disk or the network drive is there";
    }
    return new IntakeException(file.toString(), 0, 0, what, mend, cause);
  }

  /** A file that could not be written. */
  static IntakeException unwritable(Path file, IOException cause) {
    return new IntakeException(
        file.toString(),
        0,
        0,
        "this file cannot be written (" + reason(cause) + ")",
        "free some space, or choose another folder for the output",
        cause);
  }

  /** No room was left for a log larger than memory. */
  static IntakeException noRoom(Path log, Throwable cause) {
    return new IntakeException(
        log.toString(),
        0,
        0,
        String.valueOf(cause.getMessage()),
        "or read a shorter period with fewer logs",
        cause);
  }

  private static String reason(IOException cause) {
    if (cause instanceof NoSuchFileException) {
      return "there is no such folder";
    }
    if (cause instanceof AccessDeniedException) {
      return "there is no right to write here";
    }
    String text =
        cause instanceof FileSystemException system ? system.getReason() : cause.getMessage();
    return text == null ? cause.getClass().getSimpleName() : text;
  }

  private static String message(String file, long line, int column, String what, String mend) {
    StringBuilder text = new StringBuilder(file);
    if (line > 0) {
      text.append(':').append(line);
      if (column > 0) {
        text.append(':').append(column);
      }
    }
    return CellText.oneLine(text.append(": ").append(what).append("; ").append(mend).toString());
  }
}
