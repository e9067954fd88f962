package org.evenpour.casting;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.LinkedHashSet;
import java.util.Set;

/**
 * Files that go by another name until they are whole. A process that is asked to end, from the
 * keyboard or by the system, takes them away, and none is made or finished after that. Only one
 * that is killed leaves them.
 *
 * <p>Any thread may use it.
 */
public final class PartFiles {
  private static final Set<Path> OPEN = new LinkedHashSet<>();
  private static boolean ending;

  static {
    Runtime.getRuntime().addShutdownHook(new Thread(PartFiles::end, "evenpour-parts"));
  }

  private PartFiles() {}

  /**
   * Makes an empty file of that name.
   *
   * @return the same, to be written to
   */
  public static Path make(Path part) throws IOException {
    synchronized (OPEN) {
      stayWhereItEnds();
      OPEN.add(part);
      // What a killed process of the same number left; and nobody's link is followed.
      Files.deleteIfExists(part);
      return Files.createFile(part);
    }
  }

  /** Makes an empty file where the system keeps such. */
  public static Path temporary(String before, String after) throws IOException {
    synchronized (OPEN) {
      stayWhereItEnds();
      Path part = Files.createTempFile(before, after);
      OPEN.add(part);
      return part;
    }
  }

  /** A file is whole and gets its name, in one step where the disk can do that. */
  public static void finish(Path part, Path name) throws IOException {
    synchronized (OPEN) {
      stayWhereItEnds();
      try {
        Files.move(part, name, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
      } catch (AtomicMoveNotSupportedException e) {
        Files.move(part, name, StandardCopyOption.REPLACE_EXISTING);
      }
      OPEN.remove(part);
    }
  }

  /** Takes a file away, unless it got its name. */
  public static void drop(Path part) throws IOException {
    synchronized (OPEN) {
      OPEN.remove(part);
      Files.deleteIfExists(part);
    }
  }

  /** A thread that comes while the process ends has nothing to say any more. */
  private static void stayWhereItEnds() throws IOException {
    try {
      while (ending) {
        OPEN.wait();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("the process ends", e);
    }
  }

  private static void end() {
    synchronized (OPEN) {
      ending = true;
      for (Path part : OPEN) {
        try {
          Files.deleteIfExists(part);
        } catch (IOException e) {
          // Nobody is left who could be told.
        }
      }
    }
  }
}
