package org.evenpour.command;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.evenpour.casting.FileException;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * Standard output that remembers whether all of it arrived: a writer for people hides that. After
 * the first failure nothing more is tried.
 *
 * <p>Owned by the thread that runs the command.
 */
final class ToldOutput extends OutputStream {
  private final OutputStream to;
  private final boolean ofProcess;
  private @Nullable IOException failure;

  private ToldOutput(OutputStream to, boolean ofProcess) {
    this.to = to;
    this.ofProcess = ofProcess;
  }

  /** In place of standard output. */
  ToldOutput(OutputStream to) {
    this(to, false);
  }

  /** The process's own; {@code System.out} would keep failures to itself. */
  static ToldOutput ofProcess() {
    return new ToldOutput(new FileOutputStream(FileDescriptor.out), true);
  }

  private interface Writing {
    void to(OutputStream out) throws IOException;
  }

  private void write(Writing what) throws IOException {
    if (failure == null) {
      try {
        what.to(to);
        return;
      } catch (IOException e) {
        failure = e;
      }
    }
    throw new FileException(why(failure), failure);
  }

  private static Remark why(@Nullable IOException failure) {
    return Remark.of(
        "out.standard", FileException.reason(failure == null ? new IOException() : failure));
  }

  @Override
  public void write(int b) throws IOException {
    write(out -> out.write(b));
  }

  @Override
  public void write(byte[] bytes, int from, int count) throws IOException {
    write(out -> out.write(bytes, from, count));
  }

  @Override
  public void flush() throws IOException {
    if (failure == null) {
      write(OutputStream::flush);
    }
  }

  /** Why not all of it arrived, in one line; null where it did. */
  @Nullable String failure() {
    return failure == null ? null : why(failure).toString();
  }

  /**
   * Whether whoever read it has gone: {@code head} that has seen enough, a pager that was closed.
   * That is no fault, and nothing is to be said. What the system calls it depends on its language,
   * so where there is /proc that is asked as well what standard output is.
   */
  boolean isNotWanted() {
    IOException its = failure;
    if (its == null) {
      return false;
    }
    String said = String.valueOf(its.getMessage());
    return said.contains("Broken pipe")
        || said.contains("pipe is being closed")
        || ofProcess && isPipe();
  }

  private static boolean isPipe() {
    try {
      String target = Files.readSymbolicLink(Path.of("/proc/self/fd/1")).toString();
      return target.startsWith("pipe:") || target.startsWith("socket:");
    } catch (IOException | RuntimeException e) {
      return false;
    }
  }
}
