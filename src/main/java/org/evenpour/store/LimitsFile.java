package org.evenpour.store;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.FileException;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsBook.Retirement;
import org.evenpour.control.LimitsBook.SpecificationRevision;
import org.evenpour.control.LimitsVersion;
import org.evenpour.store.LineFile.Line;
import org.evenpour.store.LineFile.Lines;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * The file in which approved limits stand, with what retires them and with dated specifications: a
 * line each, only ever added to. What was added is on the disk when the method returns.
 *
 * <p>Several processes may add at the same time. Any thread may use it.
 */
public final class LimitsFile {
  private final Path file;
  private final LineFile lines;

  /**
   * @param file need not be there yet
   */
  public LimitsFile(Path file) {
    this(file, null);
  }

  /**
   * @param file need not be there yet
   * @param key signs what is added; null = nothing is signed
   */
  public LimitsFile(Path file, @Nullable SigningKey key) {
    this.file = file;
    lines = new LineFile(file, key);
  }

  /** Its lines, to be checked as lines. */
  public LineFile lines() {
    return lines;
  }

  /** The usual file: beside the profile, or where there is none beside the log. */
  public static LimitsFile beside(@Nullable Path profile, Path log) {
    Path it = profile == null ? log : profile;
    return new LimitsFile(it.resolveSibling(it.getFileName() + ".limits.jsonl"));
  }

  /** Where it is. */
  public Path path() {
    return file;
  }

  /**
   * What was read.
   *
   * @param warning what a reader should know; null where all is well
   */
  public record Contents(LimitsBook book, @Nullable Remark warning) {}

  /**
   * Everything that stands in it; nothing where there is no such file.
   *
   * @throws IOException if it cannot be read or is damaged: names file and line, and what mends it
   */
  public Contents read() throws IOException {
    Lines all = lines.read();
    LimitsBook book = book(all);
    return new Contents(
        book, all.unfinished() == 0 ? null : lines.at(all.unfinished(), Remark.of("limits.cut")));
  }

  private LimitsBook book(Lines all) throws IOException {
    List<LimitsVersion> versions = new ArrayList<>();
    List<Retirement> retirements = new ArrayList<>();
    List<SpecificationRevision> revisions = new ArrayList<>();
    for (Line line : all.whole()) {
      Object one;
      try {
        one = LimitsJson.read(line.json());
      } catch (IOException e) {
        throw new FileException(lines.at(line.number(), FileException.why(e)), e);
      }
      if (one instanceof LimitsVersion version) {
        int next = newest(versions, version) + 1;
        if (version.version() != next) {
          throw new FileException(
              lines.at(
                  line.number(),
                  Remark.of("limits.version", version.version(), version.characteristic(), next)));
        }
        versions.add(version);
      } else if (one instanceof Retirement retirement) {
        retirements.add(retirement);
      } else if (one instanceof SpecificationRevision revision) {
        revisions.add(revision);
      }
    }
    return new LimitsBook(versions, retirements, revisions);
  }

  private static int newest(List<LimitsVersion> versions, LimitsVersion like) {
    int newest = 0;
    for (LimitsVersion one : versions) {
      newest = one.isOf(like.wheel(), like.characteristic()) ? one.version() : newest;
    }
    return newest;
  }

  /**
   * Adds versions.
   *
   * @param drafts approved, without numbers yet
   * @return the same with the numbers that they got
   */
  public List<LimitsVersion> approve(List<LimitsVersion> drafts) throws IOException {
    List<LimitsVersion> numbered = new ArrayList<>();
    lines.append(
        before -> {
          List<LimitsVersion> there = new ArrayList<>(book(before).versions());
          List<String> fresh = new ArrayList<>();
          numbered.clear();
          for (LimitsVersion draft : drafts) {
            LimitsVersion one = draft.numbered(newest(there, draft) + 1);
            there.add(one);
            numbered.add(one);
            fresh.add(LimitsJson.text(one));
          }
          return fresh;
        });
    return numbered;
  }

  /**
   * Retires versions.
   *
   * @throws IOException if one of them is not there, or is retired already; then nothing is written
   */
  public void retire(List<Retirement> retirements) throws IOException {
    lines.append(
        before -> {
          LimitsBook book = book(before);
          List<String> fresh = new ArrayList<>();
          for (Retirement one : retirements) {
            LimitsVersion version =
                book.versions(one.wheel(), one.characteristic()).stream()
                    .filter(v -> v.version() == one.version())
                    .findFirst()
                    .orElse(null);
            if (version == null || book.retirement(version) != null) {
              throw new FileException(
                  Remark.of(
                      "at.file",
                      file,
                      Remark.of(
                          version == null ? "limits.gone" : "limits.retired",
                          one.version(),
                          one.characteristic())));
            }
            fresh.add(LimitsJson.text(one));
          }
          return fresh;
        });
  }

  /** Adds a dated specification. */
  public void specify(SpecificationRevision revision) throws IOException {
    lines.append(
        before -> {
          book(before); // a damaged file is not added to
          return List.of(LimitsJson.text(revision));
        });
  }
}
