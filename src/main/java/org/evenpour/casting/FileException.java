package org.evenpour.casting;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.util.regex.Pattern;
import org.evenpour.words.Remark;

/** A file could not be read or written, and why can be said in the reader's language. */
public final class FileException extends IOException {
  /** What a runtime says to itself is no help to anybody else. */
  private static final Pattern NAMES_A_CLASS = Pattern.compile("\\b(?:[a-z]+\\.){2,}[A-Z]\\w+");

  private static final long serialVersionUID = 1L;

  private final transient Remark remark;

  /**
   * @param remark which file, where in it, what is wrong, and what mends it
   */
  public FileException(Remark remark) {
    super(remark.toString());
    this.remark = remark;
  }

  /**
   * @param cause what the system said
   */
  public FileException(Remark remark, Throwable cause) {
    super(remark.toString(), cause);
    this.remark = remark;
  }

  /** Why. */
  public Remark remark() {
    return remark;
  }

  /**
   * Why some reading or writing failed, and of which file where that is known: in every language if
   * that is known, else as it was said.
   */
  public static Remark why(IOException failure) {
    Remark reason = reason(failure);
    return failure instanceof FileSystemException system && system.getFile() != null
        ? Remark.of("at.file", system.getFile(), reason)
        : reason;
  }

  /** Why some reading or writing failed, for whoever says of which file. */
  public static Remark reason(IOException failure) {
    if (failure instanceof FileException file) {
      return file.remark();
    }
    if (failure instanceof NoSuchFileException) {
      return Remark.of("system.missing");
    }
    if (failure instanceof AccessDeniedException) {
      return Remark.of("system.denied");
    }
    if (failure instanceof FileAlreadyExistsException) {
      return Remark.of("system.exists");
    }
    if (failure instanceof NotDirectoryException) {
      return Remark.of("system.no.folder");
    }
    if (failure instanceof FileSystemLoopException) {
      return Remark.of("system.loop");
    }
    if (failure instanceof CharacterCodingException) {
      return Remark.of("system.text");
    }
    String said =
        failure instanceof FileSystemException system ? system.getReason() : failure.getMessage();
    return said == null || said.isBlank() || NAMES_A_CLASS.matcher(said).find()
        ? Remark.of("system.silent")
        : Remark.verbatim(said);
  }
}
