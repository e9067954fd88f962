package org.evenpour.intake;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.evenpour.casting.FileException;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * A file could not be used: which, where in it, why, and what mends it. The message says so in one
 * line of English, such as {@code june.csv:1: no column mold; add …}; {@link #remark} says it in
 * any language.
 */
public final class IntakeException extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient Remark remark;

  /**
   * A file, or a place in it, that cannot be used.
   *
   * @param file as the user named it
   * @param line from 1; 0 where the whole file is meant
   * @param column from 1; 0 where the whole line is meant
   * @param key of the remark that says what is wrong and what the user can do
   * @param values of that remark
   */
  public IntakeException(String file, long line, int column, String key, Object... values) {
    this(at(file, line, column, Remark.of(key, values)), null);
  }

  private IntakeException(Remark remark, @Nullable Throwable cause) {
    super(CellText.oneLine(remark.toString()), cause);
    this.remark = remark;
  }

  /** Which file, where in it, why, and what mends it. */
  public Remark remark() {
    return remark;
  }

  /** Of a file that is read elsewhere, whose message already says where, what and how to mend. */
  public static IntakeException of(IOException cause) {
    return new IntakeException(FileException.why(cause), cause);
  }

  /** A file as a whole that cannot be used. */
  static IntakeException ofFile(String file, String key, Object... values) {
    return new IntakeException(file, 0, 0, key, values);
  }

  /** A file that could not be read. */
  static IntakeException unreadable(Path file, IOException cause) {
    Remark why;
    if (cause instanceof NoSuchFileException) {
      why = Remark.of("file.missing");
    } else if (cause instanceof AccessDeniedException) {
      why = Remark.of("file.denied");
    } else {
      why = Remark.of("file.unreadable", reason(cause));
    }
    return new IntakeException(at(file.toString(), 0, 0, why), cause);
  }

  /** A file that could not be written. */
  static IntakeException unwritable(Path file, IOException cause) {
    Remark why = Remark.of("file.unwritable", reason(cause));
    return new IntakeException(at(file.toString(), 0, 0, why), cause);
  }

  /** No room was left for a log larger than memory. */
  static IntakeException noRoom(Path log, Throwable cause) {
    Remark why = Remark.of("file.room", String.valueOf(cause.getMessage()));
    return new IntakeException(at(log.toString(), 0, 0, why), cause);
  }

  private static Object reason(IOException cause) {
    if (cause instanceof NoSuchFileException) {
      return Remark.of("file.no.folder");
    }
    if (cause instanceof AccessDeniedException) {
      return Remark.of("file.no.right");
    }
    return FileException.reason(cause);
  }

  private static Remark at(String file, long line, int column, Remark what) {
    if (line <= 0) {
      return Remark.of("at.file", file, what);
    }
    return column <= 0
        ? Remark.of("at.line", file, line, what)
        : Remark.of("at.column", file, line, column, what);
  }
}
