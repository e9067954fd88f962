package org.evenpour.table;

import java.util.function.Function;

/**
 * A column of a table, for whoever prints it.
 *
 * @param key names it, for formulas, filters and choices
 * @param kind what its cells hold
 * @param name as people call it
 * @param unit of all its figures; empty where there is none or it differs by row
 * @param tip one sentence on what it is; empty where its name says it
 * @param width in letters, where nothing is measured; of prose, the most that a line may hold
 * @param cell of a row
 * @param <R> what a row is about
 */
public record Column<R>(
    String key,
    Kind kind,
    String name,
    String unit,
    String tip,
    int width,
    Function<R, Cell> cell) {

  /** What the cells of a column hold. */
  public enum Kind {
    /** A few words, which stand left. */
    WORDS,
    /** Sentences, which may run over several lines. */
    PROSE,
    /** Numbers or times, which stand right. */
    FIGURES,
    /** Small pictures, which only a screen shows. */
    PICTURES
  }

  /** The heading, with the unit. */
  public String heading() {
    return unit.isEmpty() ? name : name + ", " + unit;
  }

  /** The same column for rows that hold more than it asks for. */
  public <S> Column<S> of(Function<S, R> row) {
    return new Column<>(key, kind, name, unit, tip, width, row.andThen(cell));
  }
}
