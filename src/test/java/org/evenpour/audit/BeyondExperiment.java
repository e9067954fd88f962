package org.evenpour.audit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.LongFunction;
import java.util.stream.LongStream;
import org.evenpour.casting.CastingRecord;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.BeyondSettings;
import org.evenpour.findings.BeyondSettings.Departure;
import org.evenpour.findings.SettingsWatched;
import org.evenpour.intake.IntakeException;

/**
 * What the wheel's second view costs and what it finds, on wheels whose launder level wanders and
 * acts ({@link WanderingWheel}).
 *
 * <p>Limits and effects are proposed from the first turns and judge all later ones, as on the
 * board: sound wheels for ten shifts; and wheels that all step by so much 60 turns later. Then the
 * same where the fault lies within the record that limits are proposed from. Errors are standard
 * errors over wheels.
 */
public final class BeyondExperiment {
  private static final int SHIFTS = 10;
  private static final int WATCHED = (int) Math.round(SHIFTS * WanderingWheel.TURNS_PER_SHIFT);
  private static final int WARM = 60;
  private static final int LONGEST = 200;
  private static final double OWN = 0.6;
  private static final double OWN_PHI = 0.35;

  private BeyondExperiment() {}

  /** What was found after a base, by its limits. */
  private record Found(Audited base, List<Signal> signals, SettingsWatched watched) {}

  private static Found found(WanderingWheel wheel, long seed, int base, int after, double step)
      throws IOException, IntakeException {
    Path folder = Files.createTempDirectory("beyond");
    try {
      int turns = base + after;
      StringBuilder log = wheel.log(seed, turns, t -> t >= base + WARM ? step : 0);
      String profile = WanderingWheel.profile(0.1);
      Audited audited =
          Audit.inFull(
              WanderingWheel.read(folder, WanderingWheel.first(log, base, turns), profile),
              PlantRecords.NONE);
      CastingRecord all = WanderingWheel.read(folder, log, profile);
      Audited now = Audit.again(all, PlantRecords.NONE, audited);
      return new Found(audited, now.report().signals(), now.report().watched());
    } finally {
      Files.deleteIfExists(folder.resolve("log.csv"));
      Files.deleteIfExists(folder.resolve("p.yaml"));
      Files.delete(folder);
    }
  }

  /** For each wheel: views, and false alarms of anodes, settings' moves and the view. */
  private static double[] sound(WanderingWheel wheel, long seed, int base) {
    try {
      Found found = found(wheel, seed, base, WATCHED + 1, 0);
      BeyondSettings beyond = found.watched().beyond();
      double[] row = new double[5];
      row[0] = beyond.views().size();
      row[1] = found.signals().stream().filter(one -> one.firstTurn() > base).count();
      row[2] = found.watched().alone().stream().filter(one -> one.firstTurn() > base).count();
      row[3] = beyond.alone().stream().filter(one -> one.firstTurn() > base).count();
      row[4] = row[1] + row[2] + row[3];
      return row;
    } catch (IOException | IntakeException e) {
      throw new IllegalStateException(e);
    }
  }

  private static boolean isWheels(Signal signal, double step) {
    return BeyondTold.isOfWheel(signal) && signal.size() * step > 0;
  }

  /**
   * For each wheel: whether it has a fair start; turns until the plain chart, the view, and the
   * first of them find the step; whether the view alone tells of it in the end, and whether it does
   * again where the plain chart's signal is over.
   */
  private static double[] stepped(WanderingWheel wheel, long seed, int base, double step) {
    try {
      Found found = found(wheel, seed, base, WARM + LONGEST, step);
      int onset = base + WARM + 1;
      List<Signal> its =
          found.signals().stream()
              .filter(one -> isWheels(one, step) && one.lastTurn() >= onset)
              .toList();
      List<Departure> beyond =
          found.watched().beyond().views().stream()
              .flatMap(view -> view.departures().stream())
              .filter(one -> one.size() * step > 0 && one.lastTurn() >= onset)
              .toList();
      boolean isFair =
          its.stream().allMatch(one -> one.firstTurn() >= onset)
              && beyond.stream().allMatch(one -> one.firstTurn() >= onset);
      double plain = its.stream().mapToInt(one -> one.firstTurn() - onset + 1).min().orElse(0);
      double view = beyond.stream().mapToInt(one -> one.firstTurn() - onset + 1).min().orElse(0);
      List<Departure> alone =
          found.watched().beyond().alone().stream().filter(beyond::contains).toList();
      double first = plain == 0 ? view : view == 0 ? plain : Math.min(plain, view);
      return new double[] {
        isFair ? 1 : 0,
        plain,
        view,
        first,
        !alone.isEmpty() && its.isEmpty() ? 1 : 0,
        !alone.isEmpty() && !its.isEmpty() ? 1 : 0
      };
    } catch (IOException | IntakeException e) {
      throw new IllegalStateException(e);
    }
  }

  /** For each wheel: whether plain signals, and the view alone, tell of a fault in the record. */
  private static double[] inRecord(WanderingWheel wheel, long seed, int turns, double step) {
    try {
      Path folder = Files.createTempDirectory("beyond");
      int from = turns / 2 + (int) (seed % (turns / 4));
      int to = from + 60;
      StringBuilder log = wheel.log(seed, turns, t -> t >= from && t < to ? step : 0);
      AuditReport report = Audit.run(WanderingWheel.read(folder, log, WanderingWheel.profile(0.1)));
      Files.delete(folder.resolve("log.csv"));
      Files.delete(folder.resolve("p.yaml"));
      Files.delete(folder);
      boolean plain =
          report.signals().stream()
              .anyMatch(
                  one -> isWheels(one, step) && one.sinceTurn() <= to && one.lastTurn() > from);
      List<Departure> alone =
          report.watched().beyond().alone().stream()
              .filter(one -> one.size() * step > 0)
              .filter(one -> one.sinceTurn() <= to && one.lastTurn() > from)
              .toList();
      return new double[] {
        plain ? 1 : 0,
        plain || !alone.isEmpty() ? 1 : 0,
        plain && !alone.isEmpty() ? 1 : 0,
        report.watched().beyond().alone().size() - alone.size()
      };
    } catch (IOException | IntakeException e) {
      throw new IllegalStateException(e);
    }
  }

  private static double[][] each(int wheels, long seed, LongFunction<double[]> of) {
    return LongStream.range(seed, seed + wheels).parallel().mapToObj(of).toArray(double[][]::new);
  }

  private static String mean(double[][] rows, int column, double unit) {
    double[] x = Arrays.stream(rows).mapToDouble(row -> row[column] / unit).toArray();
    double mean = Arrays.stream(x).average().orElse(Double.NaN);
    double squares = Arrays.stream(x).map(v -> (v - mean) * (v - mean)).sum();
    double error = Math.sqrt(squares / Math.max(1, x.length - 1) / x.length);
    return String.format(Locale.ROOT, "%.2f ± %.2f", mean, error);
  }

  private static String share(double[][] rows, int column) {
    double found = Arrays.stream(rows).filter(row -> row[column] > 0).count();
    return String.format(Locale.ROOT, "%.0f %%", 100 * found / rows.length);
  }

  private static double[][] delays(double[][] rows) {
    return Arrays.stream(rows)
        .map(
            row -> {
              double[] all = row.clone();
              for (int i = 1; i <= 3; i++) {
                all[i] = all[i] == 0 ? LONGEST : all[i];
              }
              return all;
            })
        .toArray(double[][]::new);
  }

  /**
   * Prints the tables.
   *
   * @param args how many wheels a line (default 60), the first seed (default 1), and to try one
   *     thing the beginning of a line's name
   */
  public static void main(String[] args) {
    int wheels = args.length > 0 ? Integer.parseInt(args[0]) : 60;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
    String only = args.length > 2 ? args[2] : "";
    System.out.println(
        "| wheel | views | false alarms over the budget | of anodes | of moves | of the view |\n"
            + "|   step | fair starts | found, plain → with the view | turns, plain → with the view"
            + " | told by the view alone, again when the plain signal is over | 60 turns in the"
            + " record: found, plain → with the view, told twice, other departures |");
    List<Row> rows =
        List.of(
            new Row(1.2, 0.7, 400, false),
            new Row(0.6, 0.7, 400, false),
            new Row(2.4, 0.7, 400, false),
            new Row(1.2, 0.95, 400, false),
            new Row(1.2, 0.7, 160, false),
            new Row(1.2, 0.98, 160, false),
            new Row(1.2, 0.7, 60, false),
            new Row(1.2, 0.7, 400, true));
    for (Row row : rows) {
      if (row.name().startsWith(only)) {
        print(row, wheels, seed);
      }
    }
  }

  /**
   * One line: s.d. and autocorrelation of what the setting does, and how many turns the base has.
   */
  private record Row(double wander, double phi, int base, boolean hasThickness) {
    String name() {
      return String.format(
          Locale.ROOT,
          "%.1f kg, φ %.2f, %d turns%s",
          wander,
          phi,
          base,
          hasThickness ? ", thickness too" : "");
    }
  }

  private static void print(Row row, int wheels, long seed) {
    int base = row.base();
    WanderingWheel wheel =
        new WanderingWheel(row.wander(), row.phi(), OWN, OWN_PHI, row.hasThickness());
    double[][] sound = each(wheels, seed, s -> sound(wheel, s, base));
    System.out.printf(
        Locale.ROOT,
        "| %s | %s | %s | %s | %s | %s |%n",
        row.name(),
        share(sound, 0),
        mean(sound, 4, SHIFTS),
        mean(sound, 1, SHIFTS),
        mean(sound, 2, SHIFTS),
        mean(sound, 3, SHIFTS));
    for (double step : new double[] {1, 1.6}) {
      double[][] fair =
          Arrays.stream(each(wheels, seed + 500_000, s -> stepped(wheel, s, base, step)))
              .filter(one -> one[0] > 0)
              .toArray(double[][]::new);
      double[][] delays = delays(fair);
      double[][] record = each(wheels, seed + 900_000, s -> inRecord(wheel, s, base, step));
      System.out.printf(
          Locale.ROOT,
          "|   step %.1f kg | %d | %s → %s | %s → %s | %s, %s | %s → %s, %s, %s |%n",
          step,
          fair.length,
          share(fair, 1),
          share(fair, 3),
          mean(delays, 1, 1),
          mean(delays, 3, 1),
          share(fair, 4),
          share(fair, 5),
          share(record, 0),
          share(record, 1),
          share(record, 2),
          mean(record, 3, 1));
    }
  }
}
