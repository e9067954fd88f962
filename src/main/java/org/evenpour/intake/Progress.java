package org.evenpour.intake;

/** Is told how far reading has come, on the thread that reads. */
@FunctionalInterface
public interface Progress {

  /** Nobody watches. */
  Progress NONE = (done, total) -> {};

  /**
   * So much is read.
   *
   * @param bytesDone of all logs together
   * @param bytesTotal of all logs together, as large as they were at the start
   */
  void at(long bytesDone, long bytesTotal);
}
