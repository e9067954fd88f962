package org.evenpour.audit;

import static org.evenpour.audit.LinkCounts.evidence;
import static org.evenpour.audit.LinkCounts.isFirst;
import static org.evenpour.audit.LinkCounts.isProven;
import static org.evenpour.audit.LinkCounts.isTogether;
import static org.evenpour.audit.LinkCounts.isWheels;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.function.LongFunction;
import java.util.stream.Collectors;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Signal;

/**
 * How often links and the table of effects are right on wheels whose settings do what is known here
 * ({@link LinkWheel}), by the whole audit of their logs.
 *
 * <p>What is planted is pours' doing, as the trade has it: a crew that pours heavier, a launder
 * level that moves the mass. Settings of cooling and weather do nothing to it. Errors are standard
 * errors over records, with signals of one record taken together; they are 0 where all or none are,
 * and say nothing then. Each row has seeds of its own.
 */
public final class LinkTrial {
  private static final double TURN_SD = 0.5;
  private static final double LAUNDER_SD_MM = 2;
  private static final double KG_PER_MM = 0.25;

  /** Turns that the onset of a signal may be off, to be the planted one's. */
  private static final int NEAR = 12;

  /** Between the first seeds of two rows. */
  private static final long ROWS_APART = 10_000;

  private LinkTrial() {}

  /**
   * One column: the share of what is counted at one place of a record's counts in another's.
   *
   * @param heading what is shared, of what
   */
  private record Column(String heading, int part, int whole) {}

  /**
   * A table: its title, its columns, how many times as many records a row as are asked for, and by
   * the rows' names what is counted in the record of a seed.
   */
  private record Table(
      String title, int times, List<Column> columns, Map<String, LongFunction<double[]>> rows) {

    static Table of(String title, int times, Column... columns) {
      return new Table(title, times, List.of(columns), new LinkedHashMap<>());
    }

    void row(String name, LongFunction<double[]> counts) {
      rows.put(name, counts);
    }

    void print(int records, long seed, String wanted) {
      if (rows.keySet().stream().noneMatch(name -> name.startsWith(wanted))) {
        return;
      }
      System.out.println("\n" + title + ":\n");
      System.out.println(
          columns.stream().map(Column::heading).collect(Collectors.joining(" | ", "| row | ", " |"))
              + "\n|"
              + "---|".repeat(columns.size() + 1));
      long first = seed;
      for (Map.Entry<String, LongFunction<double[]>> row : rows.entrySet()) {
        if (row.getKey().startsWith(wanted)) {
          double[][] counts = LinkCounts.each(times * records, first, row.getValue());
          System.out.println(
              columns.stream()
                  .map(one -> LinkCounts.share(counts, one.part(), one.whole()))
                  .collect(Collectors.joining(" | ", "| " + row.getKey() + " | ", " |")));
        }
        first += ROWS_APART;
      }
    }
  }

  /** Two settings that do nothing to the mass. */
  private static void idle(LinkWheel wheel) {
    wheel.record("hall_c", wheel.wander(4, 0.97));
    wheel.record("spray_flow_l_min", wheel.wander(3, 0.8));
  }

  /**
   * Crews take turns; one pours so many kg heavier. A signal is the crew's where that makes at
   * least half of its size.
   */
  private static double[] crew(long seed, int visit, double phi, double heavierKg) {
    int turns = 16 * visit;
    LinkWheel wheel = new LinkWheel(seed, turns, TURN_SD, phi);
    int crews = 3 + wheel.random().nextInt(2);
    int heavy = wheel.random().nextInt(crews);
    // The record begins somewhere in a visit.
    int before = wheel.random().nextInt(visit);
    double[] stands = new double[turns];
    Arrays.setAll(stands, t -> (t + before) / visit % crews == heavy ? 1 : 0);
    wheel.record("crew", t -> "crew " + ((t + before) / visit % crews + 1));
    idle(wheel);
    wheel.act(stands, heavierKg);
    AuditReport report = wheel.audit();
    double center =
        Objects.requireNonNull(report.characteristics().get(0).monitoring().used().get(0).center());
    double[] row = new double[9];
    row[0] = 1;
    row[1] = isProven(report, "crew") ? 1 : 0;
    for (Signal signal : report.signals().stream().filter(LinkCounts::isWheels).toList()) {
      double there =
          Arrays.stream(stands, signal.sinceTurn() - 1, signal.lastTurn()).average().orElse(0);
      double planted = heavierKg * there - (center - wheel.sound());
      boolean isIts = heavierKg != 0 && planted / signal.size() >= 0.5;
      Evidence of = evidence(signal, "crew");
      int at = isIts ? 2 : 6;
      row[at]++;
      row[at + 1] += of == Evidence.MOVED && isFirst(signal, "crew") ? 1 : 0;
      row[at + 2] += of == Evidence.STRONG ? 1 : 0;
    }
    return row;
  }

  private static Table crews() {
    Table table =
        Table.of(
            "One of 3 or 4 crews pours 2.5 kg heavier, 16 visits a record",
            1,
            new Column("crew proven, of records", 1, 0),
            new Column("crew moved and first, of its signals", 3, 2),
            new Column("crew strong", 4, 2),
            new Column("crew moved and first, of other signals of the wheel", 7, 6),
            new Column("crew strong", 8, 6));
    for (int visit : new int[] {20, 60}) {
      for (double phi : new double[] {0.3, 0.7, 0.95}) {
        table.row("crew-visits" + visit + "-phi" + phi, s -> crew(s, visit, phi, 2.5));
      }
      table.row("crew-visits" + visit + "-alike", s -> crew(s, visit, 0.7, 0));
    }
    return table;
  }

  /** Where a launder level steps, in s.d. of its own wander, and for how many turns each time. */
  private record Steps(int turns, int count, int length, double by) {}

  /** The launder level wanders and acts; it steps, and the wheel with it. */
  private static double[] step(long seed, double phi, double turnPhi, Steps steps) {
    LinkWheel wheel = new LinkWheel(seed, steps.turns(), TURN_SD, turnPhi);
    double[] launder = wheel.wander(LAUNDER_SD_MM, phi);
    int gap = steps.turns() / (steps.count() + 1);
    int late = wheel.random().nextInt(gap / 4);
    int[] onsets = new int[steps.count()];
    for (int i = 0; i < onsets.length; i++) {
      onsets[i] = (i + 1) * gap + late;
      int end = Math.min(steps.turns(), onsets[i] + steps.length());
      for (int t = onsets[i]; t < end; t++) {
        launder[t] += steps.by() * LAUNDER_SD_MM;
      }
    }
    wheel.record("launder_mm", launder);
    idle(wheel);
    wheel.record("melt_c", wheel.wander(5, 0.5));
    wheel.act(launder, KG_PER_MM);
    AuditReport report = wheel.audit();
    double[] row = new double[7];
    row[0] = onsets.length;
    row[6] = 1;
    for (int onset : onsets) {
      List<Signal> its =
          report.signals().stream()
              .filter(one -> isWheels(one) && one.size() * steps.by() > 0)
              .filter(one -> Math.abs(one.sinceTurn() - 1 - onset) <= NEAR)
              .toList();
      row[1] += its.isEmpty() ? 0 : 1;
      for (Signal signal : its) {
        Evidence of = evidence(signal, "launder_mm");
        row[2]++;
        row[3] += of == Evidence.STRONG && isFirst(signal, "launder_mm") ? 1 : 0;
        row[4] += of == Evidence.MOVED ? 1 : 0;
      }
    }
    boolean isOther =
        report.signals().stream()
            .flatMap(one -> one.links().stream())
            .anyMatch(one -> one.evidence() == Evidence.STRONG && !one.name().equals("launder_mm"));
    row[5] = isOther ? 1 : 0;
    return row;
  }

  private static Table steps() {
    Table table =
        Table.of(
            "A launder level that wanders (0.5 kg a s.d.) steps by 7 s.d., and the wheel with it",
            1,
            new Column("steps found", 1, 0),
            new Column("launder strong and first, of their signals", 3, 2),
            new Column("launder moved", 4, 2),
            new Column("a setting that does nothing strong anywhere, of records", 5, 6));
    for (double phi : new double[] {0.2, 0.75, 0.95}) {
      table.row("step-lasting-phi" + phi, s -> step(s, phi, 0.35, new Steps(400, 1, 400, 7)));
    }
    table.row("step-down-lasting-phi0.75", s -> step(s, 0.75, 0.35, new Steps(400, 1, 400, -7)));
    table.row("step-50turns-phi0.75", s -> step(s, 0.75, 0.35, new Steps(400, 1, 50, 7)));
    table.row("step-50turns-wheel-phi0.8", s -> step(s, 0.75, 0.8, new Steps(800, 1, 50, 7)));
    table.row("step-4x15turns-phi0.75", s -> step(s, 0.75, 0.35, new Steps(400, 4, 15, 7)));
    return table;
  }

  /** Settings that walk about and do nothing. */
  private static double[] walk(long seed, int turns, double turnPhi) {
    LinkWheel wheel = new LinkWheel(seed, turns, TURN_SD, turnPhi);
    for (int i = 1; i <= 30; i++) {
      wheel.record("walk_" + i, wheel.walk(1));
    }
    return LinkCounts.known(wheel.audit());
  }

  private static Table walks() {
    Table table =
        Table.of(
            "30 settings that walk about beside a sound wheel",
            2,
            new Column("any effect proven, of records", 1, 0),
            new Column("proven, of effects", 3, 2));
    for (int turns : new int[] {100, 400}) {
      for (double phi : new double[] {0.3, 0.7, 0.95}) {
        table.row("walks-" + turns + "turns-phi" + phi, s -> walk(s, turns, phi));
      }
    }
    return table;
  }

  /** A few turns, with settings by the turn, by the pour, and crews; none acts. */
  private static double[] few(long seed, int turns) {
    LinkWheel wheel = new LinkWheel(seed, turns, TURN_SD, 0.6);
    SplittableRandom random = wheel.random();
    for (int i = 1; i <= 6; i++) {
      wheel.record("walk_" + i, wheel.walk(1));
      double[][] byPour = new double[turns][LinkWheel.MOLDS];
      for (double[] turn : byPour) {
        Arrays.setAll(turn, m -> random.nextGaussian());
      }
      wheel.record(LinkCounts.BY_POUR + i, byPour);
    }
    wheel.record("crew", t -> "crew " + (t / 4 % 3 + 1));
    return LinkCounts.known(wheel.audit());
  }

  private static Table few() {
    Table table =
        Table.of(
            "Few turns; 6 settings that walk, 6 by the pour, and crews, none of which acts",
            2,
            new Column("any effect proven, of records", 1, 0),
            new Column("next to nothing, of effects by the turn", 5, 4),
            new Column("next to nothing, of effects by the pour", 7, 6));
    for (int turns : new int[] {3, 8, 23, 24, 40}) {
      table.row("few-" + turns + "turns", s -> few(s, turns));
    }
    return table;
  }

  /**
   * Two gauges of one launder level, which wander apart a little: the first is what acts, and steps
   * by 4 s.d. for 40 turns in the middle.
   *
   * @param correlation of the two, the step aside
   * @param kg for one s.d. of what acts
   */
  private static double[] twins(long seed, double phi, double correlation, double kg) {
    int turns = 300;
    LinkWheel wheel = new LinkWheel(seed, turns, TURN_SD, 0.4);
    double[] launder = wheel.wander(1, phi);
    double[] apart = wheel.wander(Math.sqrt(1 / correlation / correlation - 1), phi);
    int onset = 120 + wheel.random().nextInt(60);
    for (int t = onset; t < onset + 40; t++) {
      launder[t] += 4;
    }
    double[] second = new double[turns];
    Arrays.setAll(second, t -> launder[t] + apart[t]);
    wheel.record("launder_mm", launder);
    wheel.record("second_launder_mm", second);
    idle(wheel);
    wheel.act(launder, kg);
    AuditReport report = wheel.audit();
    boolean isTwin = isProven(report, "second_launder_mm");
    double[] row = new double[8];
    row[0] = 1;
    row[1] = isTogether(report, "launder_mm") && isTogether(report, "second_launder_mm") ? 1 : 0;
    row[2] = isProven(report, "launder_mm") && !isTwin ? 1 : 0;
    row[3] = isTwin ? 1 : 0;
    for (Signal signal : report.signals()) {
      if (isWheels(signal)
          && signal.size() > 0
          && Math.abs(signal.sinceTurn() - 1 - onset) <= NEAR) {
        boolean isAlone = signal.links().get(0).togetherWith().isEmpty();
        boolean isFirst = isFirst(signal, "launder_mm");
        boolean isTwinFirst = isFirst(signal, "second_launder_mm");
        row[4]++;
        row[5] += (isFirst || isTwinFirst) && !isAlone ? 1 : 0;
        row[6] += isFirst && isAlone ? 1 : 0;
        row[7] += isTwinFirst && isAlone ? 1 : 0;
      }
    }
    return row;
  }

  private static Table twins() {
    Table table =
        Table.of(
            "Two gauges of one launder level, r 0.95, the first acts: in the table of effects, and"
                + " beside the signal of a step by 4 s.d.",
            1,
            new Column("both named together, of records", 1, 0),
            new Column("the acting one alone", 2, 0),
            new Column("the other one", 3, 0),
            new Column("both named together, of signals", 5, 4),
            new Column("the acting one alone", 6, 4),
            new Column("the other one alone", 7, 4));
    for (double phi : new double[] {0, 0.8}) {
      for (double kg : new double[] {0.2, 0.4}) {
        table.row("twins-phi" + phi + "-" + kg + "kg", s -> twins(s, phi, 0.95, kg));
      }
    }
    table.row("twins-phi0.8-0.4kg-r0.98", s -> twins(s, 0.8, 0.98, 0.4));
    return table;
  }

  /**
   * Prints the tables.
   *
   * @param args how many records for each row (default 50), the first seed (default 1), and what
   *     the names of rows must begin with (default: all)
   */
  public static void main(String[] args) {
    int records = args.length > 0 ? Integer.parseInt(args[0]) : 50;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
    String wanted = args.length > 2 ? args[2] : "";
    System.out.println(
        records + " records a row (walks and few turns: twice as many), seeds from " + seed);
    for (Table table : List.of(crews(), steps(), walks(), few(), twins())) {
      table.print(records, seed, wanted);
    }
  }
}
