package org.evenpour.plant;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.FileException;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * Files that must not be written over: what a run reads, and what it has promised to write. Two
 * names are one file where they lead to the same one, through links too; devices and pipes can be
 * written to again and again.
 *
 * <p>Owned by one thread.
 */
public final class KeptFiles {
  /** Links to links go round in a ring where there are more: as in Linux. */
  private static final int MOST_LINKS = 40;

  private final List<Kept> all = new ArrayList<>();

  private record Kept(Path named, Path real, Remark what) {}

  /**
   * A file that is read; it need not be there.
   *
   * @param file null = there is none
   * @param key of its words: {@code kept.log} and the like
   */
  public KeptFiles reads(@Nullable Path file, String key) {
    if (file != null) {
      all.add(new Kept(file, real(file), Remark.of(key)));
    }
    return this;
  }

  /**
   * A file that is going to be written; nothing else may write it, or it be read.
   *
   * @param option by which it was named
   * @throws FileException if it would be lost, or another would
   */
  public void writes(Path file, String option) throws FileException {
    mayWrite(file);
    all.add(new Kept(file, real(file), Remark.of("kept.output", option)));
  }

  /**
   * Whether a file may be written.
   *
   * @throws FileException if not: says which file it is
   */
  public void mayWrite(Path file) throws FileException {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      return; // a device or a pipe; what is a folder is refused when it is written
    }
    Path real = real(file);
    for (Kept one : all) {
      if (isSame(real, one.real())) {
        throw new FileException(Remark.of("out.kept", file, one.what()));
      }
    }
  }

  private static boolean isSame(Path one, Path other) {
    if (one.equals(other)) {
      return true;
    }
    try {
      // Hard links, and names that differ only in case where the disk takes them for one.
      return Files.exists(one) && Files.exists(other) && Files.isSameFile(one, other);
    } catch (IOException e) {
      return false;
    }
  }

  /** Where a name leads: as far as that is there, without links. */
  private static Path real(Path file) {
    return real(file, 0);
  }

  private static Path real(Path file, int links) {
    Path whole = file.toAbsolutePath().normalize();
    try {
      return file.toRealPath();
    } catch (IOException e) {
      Path folder = whole.getParent();
      Path name = whole.getFileName();
      if (folder == null || name == null) {
        return whole;
      }
      try {
        // A link to what is not there yet is written through.
        if (links < MOST_LINKS && Files.isSymbolicLink(file)) {
          return real(folder.resolve(Files.readSymbolicLink(file)), links + 1);
        }
        return folder.toRealPath().resolve(name);
      } catch (IOException noSuchFolder) {
        return whole;
      }
    }
  }
}
