package org.evenpour.report.table;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.IntFunction;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.table.Cell;
import org.evenpour.table.Column;
import org.evenpour.table.Column.Kind;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * The columns of a table, written down from left to right. A column's name is the wording {@code
 * head.KEY}, or {@code head.KEY.short} where room is short, and its help {@code head.KEY.tip}.
 *
 * <p>Owned by the thread that declares the table.
 *
 * @param <R> what a row is about
 */
public final class Columns<R> {
  private static final Digits INDEX = Digits.plain(2);
  private static final int LABELS_WIDTH = 7;
  private static final int NAMES_WIDTH = 12;
  private static final int FIGURES_WIDTH = 9;

  private final Sentences sentences;
  private final boolean isShort;
  private final List<Column<R>> all = new ArrayList<>();

  private Columns(Sentences sentences, boolean isShort) {
    this.sentences = sentences;
    this.isShort = isShort;
  }

  /** Of a sheet, with full names. */
  public static <R> Columns<R> of(Sentences sentences) {
    return new Columns<>(sentences, false);
  }

  /** Of a screen's list, where room is short. */
  public static <R> Columns<R> narrow(Sentences sentences) {
    return new Columns<>(sentences, true);
  }

  /**
   * The columns so far. On a sheet no two have one heading: the second {@code 95 % from} also says
   * of which column it is.
   */
  public List<Column<R>> list() {
    if (isShort) {
      return List.copyOf(all);
    }
    Map<String, Integer> count = new HashMap<>();
    all.forEach(one -> count.merge(one.heading(), 1, Integer::sum));
    Set<String> seen = new HashSet<>();
    List<Column<R>> named = new ArrayList<>();
    String of = "";
    for (Column<R> one : all) {
      if (count.getOrDefault(one.heading(), 0) < 2) {
        of = plain(one.name());
      }
      if (!seen.add(one.heading()) && !of.isEmpty()) {
        String name = words().say("head.of", of, one.name());
        named.add(
            new Column<>(
                one.key(), one.kind(), name, one.unit(), one.tip(), one.width(), one.cell()));
      } else {
        named.add(one);
      }
    }
    return List.copyOf(named);
  }

  /** A name without {@code (as audited)}, which the column that names it says for itself. */
  private String plain(String name) {
    String mark = words().say("head.as_audited", "");
    return name.endsWith(mark) ? name.substring(0, name.length() - mark.length()) : name;
  }

  private Words words() {
    return sentences.words();
  }

  /** A column of any kind. */
  public Columns<R> cell(String key, Kind kind, Function<R, Cell> cell) {
    String name = name(key);
    String tip = "head." + key + ".tip";
    all.add(
        new Column<>(
            key,
            kind,
            words().has(name) ? words().bundle().getString(name) : key,
            "",
            words().has(tip) ? words().say(tip) : "",
            kind == Kind.FIGURES ? FIGURES_WIDTH : NAMES_WIDTH,
            cell));
    return this;
  }

  private Columns<R> last(Function<Column<R>, Column<R>> change) {
    all.set(all.size() - 1, change.apply(all.get(all.size() - 1)));
    return this;
  }

  /** Says whose the last column is: {@code First half: Anodes}. */
  public Columns<R> whose(String of) {
    return last(
        its ->
            new Column<>(
                its.key(),
                its.kind(),
                words().say("head.of", of, its.name()),
                its.unit(),
                its.tip(),
                its.width(),
                its.cell()));
  }

  /**
   * Says of the last column, on a sheet, that its cells stay as audited whatever limits somebody
   * changes there.
   */
  public Columns<R> asAudited() {
    return isShort
        ? this
        : last(
            its ->
                new Column<>(
                    its.key(),
                    its.kind(),
                    words().say("head.as_audited", its.name()),
                    its.unit(),
                    its.tip(),
                    its.width(),
                    row -> {
                      Cell cell = its.cell().apply(row);
                      return cell.text().isEmpty() ? cell : new Cell.AsAudited(cell);
                    }));
  }

  /** Names the last column otherwise. */
  public Columns<R> named(String name) {
    return last(
        its ->
            new Column<>(
                its.key(), its.kind(), name, its.unit(), its.tip(), its.width(), its.cell()));
  }

  /** Names the last column as those of this key are named. */
  public Columns<R> like(String key) {
    return named(words().say("head." + key));
  }

  /** Fills in the name of the last column. */
  public Columns<R> with(Object... values) {
    return named(words().say(name(all.get(all.size() - 1).key()), values));
  }

  private String name(String key) {
    String brief = "head." + key + ".short";
    return isShort && words().has(brief) ? brief : "head." + key;
  }

  /** Some of the columns that were declared of a part of what these rows hold. */
  public <S> Columns<R> from(Columns<S> declared, Function<R, S> part, String... keys) {
    for (String key : keys) {
      declared.all.stream()
          .filter(one -> one.key().equals(key))
          .forEach(one -> all.add(one.of(part)));
    }
    return this;
  }

  /** The unit of all figures of the last column. */
  public Columns<R> in(String unit) {
    return last(
        its ->
            new Column<>(
                its.key(), its.kind(), its.name(), unit, its.tip(), its.width(), its.cell()));
  }

  /** So many letters for the last column. */
  public Columns<R> wide(int letters) {
    return last(
        its ->
            new Column<>(
                its.key(), its.kind(), its.name(), its.unit(), its.tip(), letters, its.cell()));
  }

  /** Words; null where there are none. */
  public Columns<R> text(String key, Function<R, @Nullable String> text) {
    return cell(key, Kind.WORDS, row -> Cell.words(text.apply(row)));
  }

  /** Words from our own list. */
  public Columns<R> said(String key, Function<R, String> wording) {
    return text(key, row -> words().say(wording.apply(row)));
  }

  /** Sentences, so many letters to a line at most. */
  public Columns<R> prose(String key, int widest, Function<R, @Nullable String> text) {
    return cell(key, Kind.PROSE, row -> Cell.words(text.apply(row))).wide(widest);
  }

  /** A label, such as a mold's; null where there is none. */
  public Columns<R> label(String key, Function<R, @Nullable String> label) {
    return cell(
            key,
            Kind.WORDS,
            row -> {
              String text = label.apply(row);
              return text == null ? Cell.BLANK : new Cell.Label(text);
            })
        .wide(LABELS_WIDTH);
  }

  /** A wheel's name. */
  public Columns<R> wheel(Function<R, String> wheel) {
    return text("wheel", wheel::apply);
  }

  /** What people call a characteristic. */
  public Columns<R> characteristic(Function<R, String> name) {
    return text("characteristic", row -> words().characteristic(name.apply(row)));
  }

  /** What people call a setting. */
  public Columns<R> setting(Function<R, String> name) {
    return text("setting", row -> sentences.setting(name.apply(row)));
  }

  /** The unit that the row's figures are shown in. */
  public Columns<R> unit(Function<R, Figures> figures) {
    return text("unit", row -> figures.apply(row).unit().symbol());
  }

  /** Whether it still holds. */
  public Columns<R> state(Function<R, Boolean> isOpen) {
    return said("state", row -> isOpen.apply(row) ? "state.open" : "state.closed");
  }

  /** A time, in the zone that the column's name tells. */
  public Columns<R> time(String key, Function<R, @Nullable Instant> at) {
    return cell(
            key,
            Kind.FIGURES,
            row -> {
              Instant when = at.apply(row);
              return when == null ? Cell.BLANK : new Cell.Time(when, sentences.zone());
            })
        .with(sentences.zoneName())
        .wide(18);
  }

  /** A figure; null where it is missing. */
  public Columns<R> figure(String key, Digits digits, Function<R, @Nullable Double> value) {
    return cell(key, Kind.FIGURES, row -> new Cell.Figure(value.apply(row), digits));
  }

  /** A figure whose digits its row decides. */
  public Columns<R> figure(String key, Function<R, Cell> figure) {
    return cell(key, Kind.FIGURES, figure);
  }

  /** A count. */
  public Columns<R> count(String key, Function<R, @Nullable ? extends Number> count) {
    Digits digits = Digits.count(words().say("thousands"));
    return figure(
        key,
        digits,
        row -> {
          Number value = count.apply(row);
          return value == null ? null : (Double) value.doubleValue();
        });
  }

  /** A turn's number, whose thousands are not set apart. */
  public Columns<R> turn(String key, Function<R, @Nullable Integer> turn) {
    return figure(
        key,
        Digits.plain(0),
        row -> {
          Integer value = turn.apply(row);
          return value == null ? null : (Double) (double) value;
        });
  }

  /** A value of a row's characteristic, with a decimal more than single anodes carry. */
  public Columns<R> value(
      String key, Function<R, Figures> figures, Function<R, @Nullable Double> computed) {
    return shown(key, figures, computed, Columns::value, Digits::plain);
  }

  /** A spread of a row's characteristic. */
  public Columns<R> spread(
      String key, Function<R, Figures> figures, Function<R, @Nullable Double> computed) {
    return shown(key, figures, computed, Columns::difference, Digits::plain);
  }

  /** A departure of a row's characteristic, with its sign. */
  public Columns<R> departure(
      String key, Function<R, Figures> figures, Function<R, @Nullable Double> computed) {
    return shown(key, figures, computed, Columns::difference, Digits::signed);
  }

  /** Makes what is shown in a unit of what was computed. */
  private interface Shown {
    @Nullable Double of(Unit unit, @Nullable Double computed);
  }

  private Columns<R> shown(
      String key,
      Function<R, Figures> figures,
      Function<R, @Nullable Double> computed,
      Shown shown,
      IntFunction<Digits> digits) {
    return figure(
        key,
        row -> {
          Figures its = figures.apply(row);
          return new Cell.Figure(
              shown.of(its.unit(), computed.apply(row)), digits.apply(its.decimals() + 1));
        });
  }

  /** A value and the interval about it, which the keys {@code KEY_low}, {@code KEY_high} name. */
  public Columns<R> index(String key, Function<R, @Nullable Estimate> estimate) {
    return estimate(key, row -> INDEX, Unit.NONE, estimate);
  }

  /** The same of any kind. */
  public Columns<R> estimate(
      String key, Function<R, Digits> digits, Unit unit, Function<R, @Nullable Estimate> estimate) {
    cell(key, Kind.FIGURES, row -> figure(estimate.apply(row), Estimate::value, unit, digits, row));
    return interval(
        key,
        row -> figure(estimate.apply(row), Estimate::low, unit, digits, row),
        row -> figure(estimate.apply(row), Estimate::high, unit, digits, row));
  }

  private static <R> Cell figure(
      @Nullable Estimate estimate,
      Function<Estimate, @Nullable Double> part,
      Unit unit,
      Function<R, Digits> digits,
      R row) {
    return new Cell.Figure(
        estimate == null ? null : difference(unit, part.apply(estimate)), digits.apply(row));
  }

  /** Both ends of the 95 % interval of the column that was named last. */
  public Columns<R> interval(String key, Function<R, Cell> low, Function<R, Cell> high) {
    String name = all.get(all.size() - 1).name();
    return cell(key + "_low", Kind.FIGURES, low)
        .named(words().say("head.interval", name, words().say("head.from")))
        .cell(key + "_high", Kind.FIGURES, high)
        .named(words().say("head.interval", name, words().say("head.to")));
  }

  /** A value in the unit that is shown; null stays null. */
  static @Nullable Double value(Unit unit, @Nullable Double computed) {
    return computed == null ? null : (Double) unit.fromCanonical(computed);
  }

  /** A difference in the unit that is shown; null stays null. */
  static @Nullable Double difference(Unit unit, @Nullable Double computed) {
    return computed == null ? null : (Double) unit.differenceFromCanonical(computed);
  }
}
