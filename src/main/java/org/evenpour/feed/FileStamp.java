package org.evenpour.feed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import org.jspecify.annotations.Nullable;

/**
 * What tells a file that has changed from one that has not, without reading it.
 *
 * @param identity which file it is, whatever its name
 * @param time when it was last written to
 * @param length in bytes
 */
public record FileStamp(Object identity, FileTime time, long length) {

  /** As a file stands now; null where there is none, or it cannot be asked. */
  public static @Nullable FileStamp of(Path file) {
    try {
      return of(Files.readAttributes(file, BasicFileAttributes.class));
    } catch (IOException e) {
      return null;
    }
  }

  static FileStamp of(BasicFileAttributes file) {
    Object key = file.fileKey();
    return new FileStamp(
        key == null ? file.creationTime() : key, file.lastModifiedTime(), file.size());
  }
}
