package org.evenpour.simulate;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.evenpour.casting.EventKind;
import org.evenpour.casting.Quantity;

/**
 * What the people of a made plant write down: the casting log, the events and the profile.
 *
 * <p>Owned by the thread that writes.
 */
final class MadeLog {
  private static final DateTimeFormatter ISO = DateTimeFormatter.ISO_OFFSET_DATE_TIME;
  private static final List<String> CREWS = List.of("C1", "C2", "C3", "C4");
  private static final List<String> IDLE_EVENTS =
      List.of(
          EventKind.NOZZLE_CLEANED,
          EventKind.MOLD_DRESSED,
          EventKind.SCALE_CHECKED,
          EventKind.LADLE_RELINED);

  private final MadeWheel wheel;
  private final MadePlant plant;
  private final List<MadeFault> faults;
  private final Noise noise;
  private final Imperfections imperfections;
  private final Noise clerk;

  /**
   * What people write down.
   *
   * @param noise of everything that they write
   * @param imperfections of scale, gauge and records
   * @param clerk of what is not written down
   */
  MadeLog(
      MadeWheel wheel,
      List<MadeFault> faults,
      Noise noise,
      Imperfections imperfections,
      Noise clerk) {
    this.wheel = wheel;
    this.plant = wheel.plant();
    this.faults = faults;
    this.noise = noise;
    this.imperfections = imperfections;
    this.clerk = clerk;
  }

  List<String> columns() {
    List<String> columns = new ArrayList<>(List.of("cast_at", "wheel", "charge", "turn", "mold"));
    if (plant.hasSerials()) {
      columns.add("mold_serial");
    }
    if (plant.sideCount() > 1) {
      columns.add("ladle");
    }
    columns.add("crew");
    if (plant.hasBatches()) {
      columns.add("batch");
    }
    columns.add("mass_kg");
    if (plant.points().isEmpty()) {
      columns.add("thickness_mm");
    }
    plant.points().forEach(point -> columns.add("thickness_" + point + "_mm"));
    plant.settings().forEach(setting -> columns.add(setting.name()));
    return List.copyOf(columns);
  }

  /** The casting log, a cell for each of {@link #columns}. */
  List<List<String>> rows() {
    MadeWheel.Values values = wheel.values(faults);
    double[][] pattern = new double[plant.molds()][plant.points().size()];
    for (double[] mold : pattern) {
      for (int p = 0; p < mold.length; p++) {
        mold[p] = noise.normalWithinTwo(plant.thickness().pour());
      }
    }
    List<List<String>> rows = new ArrayList<>();
    int charge = noise.whole(100, 999);
    int batch = noise.whole(10, 60);
    int batchEnds = noise.whole(12, 40);
    for (int t = 0; t < plant.turns(); t++) {
      charge += t > 0 && plant.isStart(t) ? 1 : 0;
      if (t == batchEnds) {
        batch++;
        batchEnds += noise.whole(12, 40);
      }
      for (int m = 0; m < plant.molds(); m++) {
        List<String> row = new ArrayList<>();
        row.add(wheel.castAt(t, m).format(ISO));
        row.add(plant.wheel());
        row.add(Integer.toString(charge));
        row.add(Integer.toString(plant.firstTurn() + t));
        row.add(Integer.toString(m + 1));
        if (plant.hasSerials()) {
          row.add(serial(t, m));
        }
        if (plant.sideCount() > 1) {
          row.add(plant.side(t, m) == 0 ? "A" : "B");
        }
        row.add(CREWS.get(Math.floorMod(wheel.shift(t), CREWS.size())));
        if (plant.hasBatches()) {
          row.add("B" + batch);
        }
        double kg = imperfections.massShown(values.kg()[t][m]);
        boolean isWeighed = !clerk.happens(imperfections.massMissing());
        row.add(isWeighed ? Decimal.text(kg, 1) : "");
        thickness(row, values.mm()[t][m], pattern[m], isWeighed);
        settings(row, values, t, m);
        rows.add(row);
      }
    }
    return rows;
  }

  /**
   * The points scatter about their mean, and their mean is the anode's thickness.
   *
   * @param mayBeMissing false where the anode was not weighed: of one that is neither there is no
   *     row
   */
  private void thickness(List<String> row, double mm, double[] pattern, boolean mayBeMissing) {
    boolean isMissing = clerk.happens(imperfections.thicknessMissing()) && mayBeMissing;
    boolean isWithoutPoint = clerk.happens(imperfections.pointMissing()) && mayBeMissing;
    int without = clerk.whole(0, Math.max(1, pattern.length) - 1);
    if (pattern.length == 0) {
      row.add(isMissing ? "" : shown(mm));
      return;
    }
    double[] points = pattern.clone();
    double sum = 0;
    for (int p = 0; p < points.length; p++) {
      points[p] += noise.normal(0.6 * plant.thickness().pour());
      sum += points[p];
    }
    for (int p = 0; p < points.length; p++) {
      boolean isWritten = !isMissing && !(isWithoutPoint && p == without);
      row.add(isWritten ? shown(mm + points[p] - sum / points.length) : "");
    }
  }

  private String shown(double mm) {
    double shown = imperfections.thicknessShown(mm);
    return Decimal.text(shown, imperfections.thicknessStepMm() == 0 ? 2 : 1);
  }

  private void settings(List<String> row, MadeWheel.Values values, int turn, int mold) {
    for (int i = 0; i < plant.settings().size(); i++) {
      MadeSetting setting = plant.settings().get(i);
      boolean isMissing = noise.happens(setting.missing());
      boolean isWritten =
          setting.rhythm() != MadeSetting.Rhythm.SHIFT || (mold == 0 && wheel.isShiftStart(turn));
      row.add(
          isWritten && !isMissing
              ? Decimal.text(values.settings()[i][turn][mold], setting.decimals())
              : "");
    }
  }

  private String serial(int turn, int mold) {
    boolean isNew =
        faults.stream()
            .anyMatch(
                fault ->
                    fault.cause().equals(EventKind.MOLD_CHANGED)
                        && fault.place().firstMold() == mold
                        && turn >= fault.firstTurn());
    return (isNew ? "M2" : "M1") + Integer.toString(100 + mold).substring(1);
  }

  /** The events, a cell for each of {@link EventBook#COLUMNS}. */
  List<List<String>> events() {
    record Event(OffsetDateTime at, String mold, String event, String note) {}
    List<Event> events = new ArrayList<>();
    for (int turn : plant.chargeStarts()) {
      OffsetDateTime stopped = wheel.castAt(turn - 1, plant.molds() - 1).plusMinutes(1);
      long minutes = Duration.between(stopped, wheel.castAt(turn, 0)).toMinutes();
      events.add(new Event(stopped, "", EventKind.WHEEL_STOPPED, minutes + " min"));
    }
    for (MadeFault fault : faults) {
      if (fault.cause().equals(EventKind.MOLD_CHANGED)) {
        int mold = fault.place().firstMold();
        OffsetDateTime at = wheel.castAt(fault.firstTurn(), 0).minusMinutes(noise.whole(10, 60));
        events.add(new Event(at, Integer.toString(mold + 1), fault.cause(), ""));
      }
    }
    for (int idle = noise.whole(2, 6); idle > 0; idle--) {
      int kind = noise.whole(0, IDLE_EVENTS.size() - 1);
      int mold = noise.whole(0, plant.molds() - 1);
      OffsetDateTime at = wheel.castAt(noise.whole(1, plant.turns() - 1), mold).minusSeconds(15);
      events.add(
          new Event(at, kind < 2 ? Integer.toString(mold + 1) : "", IDLE_EVENTS.get(kind), ""));
    }
    return events.stream()
        .sorted(Comparator.comparing(Event::at))
        .map(e -> List.of(e.at().format(ISO), plant.wheel(), e.mold(), e.event(), e.note()))
        .toList();
  }

  /** The wheel's profile as YAML. */
  String profile() {
    StringBuilder text = new StringBuilder();
    text.append("wheel: ").append(plant.wheel()).append('\n');
    text.append("molds: ").append(plant.molds()).append('\n');
    text.append("zone: \"").append(plant.start().getOffset().getId()).append("\"\n");
    if (plant.falseAlarms() > 0) {
      text.append("false_alarms_per_shift: ")
          .append(Decimal.text(plant.falseAlarms(), 1))
          .append('\n');
    }
    text.append("characteristics:\n");
    specification(text, Quantity.MASS, "kg", plant.massTargetKg(), 6 * plant.mass().pour(), 1);
    double mm = 6 * plant.thickness().pour() + 2 * plant.thickness().mold();
    specification(text, Quantity.THICKNESS, "mm", plant.thicknessTargetMm(), mm, 2);
    text.append("settings:\n");
    for (MadeSetting setting : plant.settings()) {
      text.append("  ").append(setting.name()).append(": {group: ").append(setting.group());
      if (setting.lagTurns() > 0) {
        text.append(", lag_turns: ").append(setting.lagTurns());
      }
      text.append("}\n");
    }
    return text.toString();
  }

  private static void specification(
      StringBuilder text, String name, String unit, double target, double off, int decimals) {
    text.append(
        String.format(
            Locale.ROOT,
            "  %s: {unit: %s, lower: %s, target: %s, upper: %s}\n",
            name,
            unit,
            Decimal.text(target - off, decimals),
            Decimal.text(target, decimals),
            Decimal.text(target + off, decimals)));
  }
}
