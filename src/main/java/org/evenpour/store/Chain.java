package org.evenpour.store;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import org.evenpour.casting.FileException;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * Lines of a file that is only added to, each with the hash of the line before it: SHA-256 (FIPS
 * 180-4) of that line's bytes in UTF-8, without its line end. A line that was changed, taken out,
 * moved or put in twice no longer fits the one behind it, and is named. What no chain can show is
 * that lines at the end were taken away; for that the last line's hash is told, to be kept
 * elsewhere.
 *
 * <p>Files of before there were hashes are read: lines without may stand at the beginning, and the
 * first one with a hash holds them from then on.
 */
public final class Chain {
  private static final String NOTHING = "0".repeat(64);

  private Chain() {}

  /**
   * What a line says of its place.
   *
   * @param number of the line among those that count, from 1
   * @param before hash of the line before it; zeros for the first
   */
  public record Link(int number, String before) {}

  /**
   * A line that counts.
   *
   * @param line its number in the file, from 1
   * @param text without its line end
   * @param link null where it is of before there were hashes
   */
  public record Entry(int line, String text, @Nullable Link link) {}

  /**
   * Where a chain ends.
   *
   * @param lines that count
   * @param unhashed how many of them have no hash of their own
   * @param hash of the last one; zeros where there is none
   */
  public record Head(int lines, int unhashed, String hash) {}

  /** The hash of a line. */
  public static String hash(String text) {
    try {
      byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** The place of a line that comes behind these. */
  public static Link next(List<Entry> all) {
    return new Link(all.size() + 1, before(all, all.size()));
  }

  private static String before(List<Entry> all, int index) {
    return index == 0 ? NOTHING : hash(all.get(index - 1).text());
  }

  /** Where it ends. */
  public static Head head(List<Entry> all) {
    return new Head(
        all.size(),
        (int) all.stream().filter(one -> one.link() == null).count(),
        before(all, all.size()));
  }

  /**
   * Whether a line's hash was the head's once.
   *
   * @param hash as it was written down then
   * @return number of the line in the file, from 1; 0 where there is no such line
   */
  public static int lineOf(List<Entry> all, String hash) {
    return all.stream()
        .filter(one -> hash(one.text()).equalsIgnoreCase(hash.strip()))
        .findFirst()
        .map(Entry::line)
        .orElse(0);
  }

  /**
   * Whether each line fits the one before it.
   *
   * @throws FileException if one does not: names file and line, what was done to it, and the mend
   */
  public static void verify(Path file, List<Entry> all) throws FileException {
    boolean isHashed = false;
    for (int i = 0; i < all.size(); i++) {
      Entry one = all.get(i);
      Link its = one.link();
      if (its == null) {
        if (isHashed) {
          throw wrong(file, one.line(), Remark.of("chain.forged"));
        }
        continue;
      }
      isHashed = true;
      if (its.number() != i + 1 || !its.before().equals(before(all, i))) {
        throw misfit(file, all, i, its);
      }
    }
  }

  private static FileException misfit(Path file, List<Entry> all, int index, Link its) {
    Entry one = all.get(index);
    for (int i = 0; i < index; i++) {
      if (all.get(i).text().equals(one.text())) {
        return wrong(file, one.line(), Remark.of("chain.doubled", all.get(i).line()));
      }
    }
    if (its.number() == index + 1 && index > 0) {
      return wrong(
          file, all.get(index - 1).line(), Remark.of("chain.changed", all.get(index).line()));
    }
    boolean isElsewhere =
        all.stream().anyMatch(other -> other.link() != null && other.link().number() == index + 1);
    return wrong(
        file,
        one.line(),
        its.number() > index + 1 && !isElsewhere
            ? Remark.of("chain.removed", its.number() - index - 1)
            : Remark.of("chain.moved", its.number(), index + 1));
  }

  private static FileException wrong(Path file, int line, Remark what) {
    return new FileException(Remark.of("at.line", file, line, what));
  }
}
