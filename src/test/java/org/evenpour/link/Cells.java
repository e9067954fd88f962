package org.evenpour.link;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntBinaryOperator;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Setting;
import org.evenpour.casting.SettingProfile;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelProfile;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.column.IntColumn;
import org.evenpour.column.Labels;
import org.evenpour.column.LongColumn;
import org.evenpour.column.Pages;
import org.evenpour.control.Episode;

/** A made-up wheel record of turns by molds, filled cell by cell. */
final class Cells {
  static final int MOLDS = 12;
  private static final long TURN_MILLIS = 600_000;

  /** A value for each turn and mold. */
  interface Value {
    double at(int turn, int mold);
  }

  private final Pages pages = new Pages(Long.MAX_VALUE);
  private final int turns;
  private final List<Setting> settings = new ArrayList<>();
  private final List<CastingEvent> events = new ArrayList<>();
  private DoubleColumn mass;

  Cells(int turns, Value value) {
    this.turns = turns;
    mass = column(value);
  }

  private DoubleColumn column(Value value) {
    DoubleColumn column = new DoubleColumn(pages);
    for (int t = 0; t < turns; t++) {
      for (int m = 0; m < MOLDS; m++) {
        column.add(value.at(t, m));
      }
    }
    return column;
  }

  Cells setting(String name, int lag, Value value) {
    settings.add(
        new Setting(
            name, Unit.NONE, new SettingProfile("", lag), column(value), null, new Labels()));
    return this;
  }

  Cells category(String name, IntBinaryOperator label) {
    IntColumn column = new IntColumn(pages);
    Labels labels = new Labels();
    for (int t = 0; t < turns; t++) {
      for (int m = 0; m < MOLDS; m++) {
        column.add(labels.index("L" + label.applyAsInt(t, m)));
      }
    }
    settings.add(new Setting(name, Unit.NONE, SettingProfile.NONE, null, column, labels));
    return this;
  }

  Cells event(String kind, int turn, String mold) {
    events.add(
        new CastingEvent(
            Instant.ofEpochMilli(turn * TURN_MILLIS),
            "",
            mold.isEmpty() ? null : mold,
            kind,
            "",
            ""));
    return this;
  }

  WheelRecord record() {
    Labels molds = new Labels();
    LongColumn at = new LongColumn(pages);
    IntColumn turn = new IntColumn(pages);
    IntColumn mold = new IntColumn(pages);
    IntColumn none = new IntColumn(pages);
    LongColumn line = new LongColumn(pages);
    for (int t = 0; t < turns; t++) {
      for (int m = 0; m < MOLDS; m++) {
        at.add(t * TURN_MILLIS + m * 30_000L);
        turn.add(1000 + t);
        mold.add(molds.index(Integer.toString(m + 1)));
        none.add(-1);
        line.add(line.size() + 2L);
      }
    }
    return new WheelRecord(
        "",
        WheelProfile.DEFAULT,
        molds,
        new Labels(),
        new Labels(),
        at,
        turn,
        mold,
        none,
        none,
        line,
        List.of(new Characteristic("mass", Unit.KG, Unit.KG, Specification.NONE, mass)),
        List.of(),
        settings,
        null,
        null,
        null);
  }

  TurnGrid grid() {
    WheelRecord record = record();
    int[] turnOfRow = new int[record.rows()];
    for (int i = 0; i < turnOfRow.length; i++) {
      turnOfRow[i] = i / MOLDS;
    }
    return new TurnGrid(record, turnOfRow, turns, new boolean[turnOfRow.length]);
  }

  /** What is found beside an episode, by the setting's or event's name. */
  List<Finding> examine(Episode episode) {
    TurnGrid grid = grid();
    Linker linker = new Linker(grid, events);
    Characteristic characteristic = grid.record().characteristics().get(0);
    linker.signals(characteristic, List.of(episode));
    return linker.examine(characteristic, episode);
  }

  static Episode episode(Episode.Chart scope, int index, int from, int to, double size) {
    return new Episode(
        scope,
        index,
        size > 0 ? 1 : -1,
        1000 + from + 2,
        1000 + to,
        (from + 2) * TURN_MILLIS,
        to * TURN_MILLIS,
        1000 + from,
        from * TURN_MILLIS,
        false,
        false,
        List.of(),
        to - from + 1,
        size,
        0.2,
        size,
        0,
        0);
  }
}
