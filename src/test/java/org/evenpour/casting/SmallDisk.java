package org.evenpour.casting;

import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** A disk of so few bytes that it is soon full; to be had by root on Linux. */
public final class SmallDisk implements AutoCloseable {
  private final Path folder;

  private SmallDisk(Path folder) {
    this.folder = folder;
  }

  /**
   * Mounts one; the test is left out where that may not be done.
   *
   * @param folder is made
   */
  public static SmallDisk at(Path folder, int kib) throws IOException {
    Files.createDirectories(folder);
    boolean isMounted =
        ran("mount", "-t", "tmpfs", "-o", "size=" + kib + "k", "tmpfs", folder.toString());
    assumeThat(isMounted).as("may mount a disk").isTrue();
    return new SmallDisk(folder);
  }

  private static boolean ran(String... words) throws IOException {
    try {
      Process process =
          new ProcessBuilder(words)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      return process.waitFor(20, TimeUnit.SECONDS) && process.exitValue() == 0;
    } catch (IOException noSuchProgram) {
      return false;
    } catch (InterruptedException e) {
      throw new IOException(e);
    }
  }

  /** Where it is. */
  public Path folder() {
    return folder;
  }

  /** Takes what room is left, up to so many bytes. */
  public void fill(int bytesLeft) throws IOException {
    Path rest = folder.resolve("rest");
    long room = Files.getFileStore(folder).getUsableSpace() - bytesLeft;
    Files.write(rest, new byte[(int) Math.max(0, room)]);
  }

  @Override
  public void close() throws IOException {
    ran("umount", "-l", folder.toString());
  }
}
