package org.evenpour.store;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.casting.CauseMark.Place;
import org.evenpour.casting.CauseMark.Verdict;
import org.evenpour.casting.Direction;
import org.evenpour.casting.FileException;
import org.evenpour.casting.Scope;
import org.evenpour.store.LineFile.Line;
import org.evenpour.store.LineFile.Lines;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * The file in which people say which causes of signals were right or wrong: a line each, only ever
 * added to; what is taken back is one line more. What was added is on the disk when the method
 * returns.
 *
 * <p>Several processes may add at the same time. Any thread may use it.
 */
public final class CausesFile {
  private static final String FORMAT = "evenpour.causes/1";
  private static final String MARKED = "cause_marked";

  private final Path file;
  private final LineFile lines;

  /**
   * @param file need not be there yet
   */
  public CausesFile(Path file) {
    this(file, null);
  }

  /**
   * @param file need not be there yet
   * @param key signs what is added; null = nothing is signed
   */
  public CausesFile(Path file, @Nullable SigningKey key) {
    this.file = file;
    lines = new LineFile(file, key);
  }

  /** Its lines, to be checked as lines. */
  public LineFile lines() {
    return lines;
  }

  /** The usual file: beside the profile, or where there is none beside the log. */
  public static CausesFile beside(@Nullable Path profile, Path log) {
    Path it = profile == null ? log : profile;
    return new CausesFile(it.resolveSibling(it.getFileName() + ".causes.jsonl"));
  }

  /** Where it is. */
  public Path path() {
    return file;
  }

  /**
   * What was read.
   *
   * @param marks in the order in which they were made
   * @param warning what a reader should know; null where all is well
   */
  public record Contents(List<CauseMark> marks, @Nullable Remark warning) {
    /** Copies the list. */
    public Contents {
      marks = List.copyOf(marks);
    }
  }

  /**
   * Everything that stands in it; nothing where there is no such file.
   *
   * @throws IOException if it cannot be read or is damaged: names file and line, and what mends it
   */
  public Contents read() throws IOException {
    Lines all = lines.read();
    return new Contents(
        marks(all),
        all.unfinished() == 0 ? null : lines.at(all.unfinished(), Remark.of("causes.cut")));
  }

  /**
   * Adds a mark.
   *
   * @return all marks that now stand in the file, this one last
   * @throws IOException if it cannot be written, or the file is damaged; then nothing counts that
   *     did not before
   */
  public List<CauseMark> add(CauseMark mark) throws IOException {
    List<CauseMark> all = new ArrayList<>();
    lines.append(
        before -> {
          all.addAll(marks(before));
          all.add(mark);
          return List.of(text(mark));
        });
    return List.copyOf(all);
  }

  private List<CauseMark> marks(Lines all) throws IOException {
    List<CauseMark> marks = new ArrayList<>();
    for (Line line : all.whole()) {
      try {
        marks.add(mark(line.json()));
      } catch (IOException e) {
        throw new FileException(lines.at(line.number(), FileException.why(e)), e);
      }
    }
    return marks;
  }

  private static String text(CauseMark one) throws IOException {
    return JsonLine.text(
        FORMAT,
        MARKED,
        out -> {
          out.writeStringField("wheel", one.place().wheel());
          out.writeStringField("characteristic", one.place().characteristic());
          out.writeStringField("scope", one.place().scope().id());
          out.writeStringField("mold", one.place().mold());
          out.writeStringField("side", one.place().side());
          out.writeStringField("direction", one.place().direction().id());
          out.writeStringField("from", one.from().toString());
          out.writeStringField("to", one.to().toString());
          out.writeStringField("kind", id(one.cause().kind()));
          out.writeStringField("cause", one.cause().name());
          out.writeStringField("verdict", id(one.verdict()));
          out.writeStringField("who", one.who());
          out.writeStringField("why", one.why());
          out.writeStringField("marked_at", one.at().toString());
        });
  }

  private static String id(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }

  private static CauseMark mark(String json) throws IOException {
    JsonMembers line = JsonLine.read(json, FORMAT);
    String record = line.text("record");
    if (!record.equals(MARKED)) {
      throw JsonLine.unknown(record);
    }
    String name = line.text("cause");
    if (name.isBlank()) {
      throw new FileException(Remark.of("causes.empty"));
    }
    return new CauseMark(
        new Place(
            line.text("wheel"),
            line.text("characteristic"),
            line.oneOf("scope", Scope.values(), Scope::id),
            line.textOrNull("mold"),
            line.textOrNull("side"),
            line.oneOf("direction", Direction.values(), Direction::id)),
        line.instant("from"),
        line.instant("to"),
        new Cause(line.oneOf("kind", Kind.values(), CausesFile::id), name),
        line.oneOf("verdict", Verdict.values(), CausesFile::id),
        line.text("who"),
        line.text("why"),
        line.instant("marked_at"));
  }
}
