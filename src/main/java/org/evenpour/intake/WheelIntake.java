package org.evenpour.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.evenpour.casting.Anode;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.CharacteristicProfile;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Setting;
import org.evenpour.casting.ThicknessPoint;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelProfile;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.column.IntColumn;
import org.evenpour.column.Labels;
import org.evenpour.column.LongColumn;
import org.evenpour.column.Pages;
import org.jspecify.annotations.Nullable;

/** One wheel's record while it grows. Owned by the thread that reads the log. */
final class WheelIntake {
  final int index;
  final String name;
  final WheelProfile profile;
  final WallClock clock;
  final Labels molds = new Labels();
  final LabelIndex moldIndex = new LabelIndex();
  final TurnCounter turns;
  final SeenPours seen = new SeenPours();
  final Leaps leaps = new Leaps();

  /** The latest time of all rows kept, and where it stands; MIN_VALUE before the first. */
  long latestMillis = Long.MIN_VALUE;

  long latestLine;

  /** Rows kept, those that the columns do not have yet included. */
  int rowsKept;

  private final Pages pages;
  private final List<Long> moldNumbers = new ArrayList<>();
  private final LongColumn castAtMillis;
  private final IntColumn turn;
  private final IntColumn mold;
  private final LongColumn line;
  private final IntColumn missing;
  private final Map<String, DoubleColumn> characteristics = new LinkedHashMap<>();
  private final Map<String, Unit> recordedUnits = new LinkedHashMap<>();
  private final Map<String, DoubleColumn> points = new LinkedHashMap<>();
  private @Nullable DoubleColumn setPoint;
  private double firstTarget = Double.NaN;
  private boolean targetVaries;

  WheelIntake(int index, String name, WheelProfile profile, Pages pages) {
    this.index = index;
    this.name = name;
    this.profile = profile;
    this.pages = pages;
    clock = new WallClock(profile.zone());
    turns = new TurnCounter(profile.molds());
    castAtMillis = new LongColumn(pages);
    turn = new IntColumn(pages);
    mold = new IntColumn(pages);
    line = new LongColumn(pages);
    missing = new IntColumn(pages);
  }

  int rows() {
    return castAtMillis.size();
  }

  /** The earliest time that a next row may have. */
  long notBefore() {
    return latestMillis == Long.MIN_VALUE
        ? Long.MIN_VALUE
        : latestMillis - (long) Math.min(profile.backwardsSeconds() * 1000, 1e15);
  }

  /** Adds a mold that a kept row names for the first time. */
  int addMold(String label, long number) {
    int added = molds.index(label);
    if (added == moldNumbers.size()) {
      moldNumbers.add(number);
    }
    return added;
  }

  long moldNumber(int moldIndexOfRow) {
    return moldNumbers.get(moldIndexOfRow);
  }

  /** The column of a characteristic, and its unit where a log records it first. */
  DoubleColumn open(String characteristic, Unit recorded) {
    recordedUnits.putIfAbsent(characteristic, recorded);
    return characteristics.computeIfAbsent(characteristic, any -> new DoubleColumn(pages));
  }

  /** The column of what each pour was set to. */
  DoubleColumn openSetPoint() {
    DoubleColumn its = setPoint;
    if (its == null) {
      its = new DoubleColumn(pages);
      setPoint = its;
    }
    return its;
  }

  /** The column of a thickness point. */
  DoubleColumn point(String point) {
    return points.computeIfAbsent(point, any -> new DoubleColumn(pages));
  }

  /** Takes in the target of a kept row. */
  void target(double kg) {
    if (Double.isNaN(firstTarget)) {
      firstTarget = kg;
    } else if (kg != firstTarget) {
      targetVaries = true;
    }
  }

  /** A row is kept. */
  void follow(long millis, long rowLine) {
    if (millis > latestMillis) {
      latestMillis = millis;
      latestLine = rowLine;
    }
  }

  /** Takes in where and when rows were cast; their values follow into the columns. */
  void add(long[] millis, int[] turns, int[] itsMolds, long[] lines, int from, int to) {
    castAtMillis.addAll(millis, from, to);
    turn.addAll(turns, from, to);
    mold.addAll(itsMolds, from, to);
    line.addAll(lines, from, to);
  }

  /** The last row. */
  Anode lastAnode(Others others) {
    int row = rows() - 1;
    double[] values =
        Quantity.ALL.stream()
            .filter(this::isJudged)
            .map(characteristics::get)
            .mapToDouble(
                column -> column != null && column.size() > row ? column.get(row) : Double.NaN)
            .toArray();
    return new Anode(
        castAtMillis.get(row),
        turn.get(row),
        mold.get(row),
        others.ladle().label(index, row),
        others.serial().label(index, row),
        values);
  }

  /** A deviation is judged only where there are several targets: else it says what mass says. */
  private boolean isJudged(String characteristic) {
    return characteristics.containsKey(characteristic)
        && (targetVaries || !characteristic.equals(Quantity.MASS_DEVIATION));
  }

  /** The record as it stands; further rows show in its columns. */
  WheelRecord record(Others others) {
    List<Characteristic> judged = new ArrayList<>();
    for (String characteristic : Quantity.ALL) {
      DoubleColumn values = characteristics.get(characteristic);
      if (values == null || !isJudged(characteristic)) {
        continue;
      }
      SettingIntake.pad(values, rows());
      Unit recorded = Objects.requireNonNull(recordedUnits.get(characteristic));
      CharacteristicProfile own = profile.characteristics().get(characteristic);
      judged.add(
          new Characteristic(
              characteristic,
              recorded.canonicalUnit(),
              own == null ? recorded : own.unit(),
              profile.specification(characteristic),
              values));
    }
    List<ThicknessPoint> measured = new ArrayList<>();
    points.forEach(
        (point, values) -> {
          SettingIntake.pad(values, rows());
          measured.add(new ThicknessPoint(point, values));
        });
    if (setPoint != null) {
      SettingIntake.pad(setPoint, rows());
    }
    List<Setting> settings = new ArrayList<>();
    for (SettingIntake other : others.settings()) {
      Setting setting = other.setting(index, rows(), profile);
      if (setting != null) {
        settings.add(setting);
      }
    }
    Setting side = of(others.ladle());
    Setting serial = of(others.serial());
    return new WheelRecord(
        name,
        profile,
        molds,
        side == null ? new Labels() : side.labels(),
        serial == null ? new Labels() : serial.labels(),
        castAtMillis,
        turn,
        mold,
        labels(side),
        labels(serial),
        line,
        List.copyOf(judged),
        List.copyOf(measured),
        List.copyOf(settings),
        of(others.disposition()),
        of(others.defect()),
        setPoint);
  }

  private @Nullable Setting of(SettingIntake column) {
    return column.setting(index, rows(), profile);
  }

  private IntColumn labels(@Nullable Setting names) {
    if (names != null && names.categories() != null) {
      return names.categories();
    }
    SettingIntake.pad(missing, rows());
    return missing;
  }

  /** The columns that all wheels share. */
  record Others(
      SettingIntake ladle,
      SettingIntake serial,
      SettingIntake disposition,
      SettingIntake defect,
      List<SettingIntake> settings) {}
}
