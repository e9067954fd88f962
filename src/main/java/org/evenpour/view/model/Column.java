package org.evenpour.view.model;

import java.util.function.Function;

/**
 * A column of a table.
 *
 * @param key names it: {@code column.KEY} among the words, {@code column.KEY.tip} explains it
 * @param unit stands behind its name; empty = none
 * @param width in letters
 * @param cell of a row
 */
public record Column<R>(String key, String unit, int width, Function<R, Cell> cell) {

  /** The heading, with the unit. */
  public String heading(Language language) {
    String name = language.say("column." + key);
    return unit.isEmpty() ? name : name + ", " + unit;
  }

  /** One sentence on what it is; empty where there is none. */
  public String tip(Language language) {
    String tip = "column." + key + ".tip";
    return language.screen().has(tip) ? language.say(tip) : "";
  }
}
