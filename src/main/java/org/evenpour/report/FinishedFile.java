package org.evenpour.report;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import org.evenpour.casting.FileException;
import org.evenpour.casting.PartFiles;
import org.evenpour.words.Remark;

/**
 * Writes a file so that it appears under its name only when it is whole.
 *
 * <p>The content goes to a hidden {@code .part} file in the same folder, is forced to the disk and
 * then takes the name in one step. A run that is interrupted, or a disk that fills up, leaves the
 * earlier file as it was.
 */
public final class FinishedFile {
  private static final AtomicLong COUNT = new AtomicLong();

  private FinishedFile() {}

  /** What is written; may fail at any point. */
  @FunctionalInterface
  public interface Content {
    /** Writes everything to the stream and leaves it open. */
    void writeTo(OutputStream out) throws IOException;
  }

  /**
   * Writes a file, or leaves everything as it was.
   *
   * @param target its name; a device or a pipe is written to directly, for it can't be replaced
   * @throws IOException if it cannot be written: says which file, why, and what would mend it
   */
  public static void write(Path target, Content content) throws IOException {
    try {
      if (Files.isDirectory(target)) {
        throw new FileException(Remark.of("out.folder", target));
      }
      Path place = Files.exists(target) ? target.toRealPath() : target.toAbsolutePath();
      if (Files.exists(place) && !Files.isRegularFile(place)) {
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(place))) {
          content.writeTo(out);
        } catch (IOException e) {
          throw new FileException(Remark.of("out.part", target, FileException.reason(e)), e);
        }
        return;
      }
      Path folder = place.getParent();
      if (folder == null || !Files.isDirectory(folder)) {
        throw new FileException(Remark.of("out.no.folder", target));
      }
      replace(place, folder, content);
    } catch (AccessDeniedException e) {
      throw new FileException(Remark.of("out.busy", target), e);
    } catch (FileSystemException e) {
      throw new FileException(Remark.of("out.unwritable", target, FileException.reason(e)), e);
    }
  }

  /**
   * Writes several files, or leaves everything as it was: each takes its name only when all that
   * come after it have theirs.
   *
   * @param files their names and what is written, in any order
   */
  public static void writeAll(Map<Path, Content> files) throws IOException {
    try {
      writeAll(List.copyOf(files.entrySet()));
    } catch (NextFailed e) {
      throw e.why;
    }
  }

  /** A later file could not be written, which says nothing of the one that waits for it. */
  private static final class NextFailed extends RuntimeException {
    private static final long serialVersionUID = 1;
    private final transient IOException why;

    NextFailed(IOException why) {
      super(why);
      this.why = why;
    }
  }

  private static void writeAll(List<Map.Entry<Path, Content>> files) throws IOException {
    if (!files.isEmpty()) {
      write(
          files.get(0).getKey(),
          out -> {
            files.get(0).getValue().writeTo(out);
            out.flush(); // no room is told before the others are in their places
            try {
              writeAll(files.subList(1, files.size()));
            } catch (IOException e) {
              throw new NextFailed(e);
            }
          });
    }
  }

  private static void replace(Path place, Path folder, Content content) throws IOException {
    Path part =
        folder.resolve(
            "."
                + place.getFileName()
                + "."
                + ProcessHandle.current().pid()
                + "-"
                + COUNT.incrementAndGet()
                + ".part");
    try {
      try (FileChannel channel = FileChannel.open(PartFiles.make(part), StandardOpenOption.WRITE)) {
        OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
        content.writeTo(out);
        out.flush();
        channel.force(true);
      } catch (AccessDeniedException e) {
        throw e;
      } catch (IOException e) {
        throw new FileException(Remark.of("out.part", place, FileException.reason(e)), e);
      }
      PartFiles.finish(part, place);
    } finally {
      PartFiles.drop(part);
    }
  }
}
