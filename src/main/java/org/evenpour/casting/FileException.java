package org.evenpour.casting;

import java.io.IOException;

/** A file could not be read or written, and why can be said in the reader's language. */
public final class FileException extends IOException {
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
   * Why some reading or writing failed: in every language if that is known, else as it was said.
   */
  public static Remark why(IOException failure) {
    return failure instanceof FileException file
        ? file.remark()
        : Remark.verbatim(String.valueOf(failure.getMessage()));
  }
}
