package org.evenpour.control;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.evenpour.control.PlantWatch.Watched;
import org.evenpour.control.PlantWheel.Plant;

/**
 * An independent trial of the alarms, on wheels as real plants are ({@link PlantWheel}) and not as
 * the simulator makes them. It was written without a look into the engine, by its public entry
 * points alone, and should be kept so.
 *
 * <p>Unless a row says otherwise: 26 molds, an anode every 28.8 s, limits from 400 turns, a budget
 * of one false alarm a shift of 8 hours. Errors are standard errors over wheels. All rows have the
 * same seeds, so that they differ by what they say and not by luck.
 */
public final class PlantTrial {
  private static final int SHIFTS = 10;

  private PlantTrial() {}

  /** What a row is measured by: wheels, first seed. */
  private interface Row {
    String of(int wheels, long seed);
  }

  /** A table: its title, its heading, and its rows by name. */
  private record Table(String title, String heading, Map<String, Row> rows) {

    Table(String title, String heading) {
      this(title, heading, new LinkedHashMap<>());
    }

    Table row(String name, Row row) {
      rows.put(name, row);
      return this;
    }
  }

  /** False alarms over the budget: all and by scope. */
  private static Row alarms(Watched watched, int base) {
    Plant plant = watched.plant();
    int turns = (int) Math.round(SHIFTS * plant.turnsPerShift());
    double perBudget = plant.turnsPerShift() / turns / watched.budget();
    return (wheels, seed) ->
        PlantWatch.scopes(
            PlantWatch.each(
                wheels,
                seed,
                s -> {
                  List<Episode> episodes = new ArrayList<>();
                  for (int c = 0; c < watched.characteristics(); c++) {
                    PlantWheel wheel = new PlantWheel(plant, s + 1_000_000L * c);
                    CharacteristicMonitor monitor =
                        watched.monitor(watched.limits(wheel.turns(base)));
                    // One more than is counted: as AlarmExperiment does it.
                    for (int t = 0; t <= turns; t++) {
                      watched.accept(monitor, wheel.turn());
                    }
                    monitor.finish();
                    episodes.addAll(monitor.episodes());
                  }
                  return PlantWatch.byScope(episodes);
                }),
            perBudget);
  }

  private static Row alarms(Plant plant) {
    return alarms(new Watched(plant), 400);
  }

  private static Table falseAlarms() {
    Plant normal = Plant.plain(PourShape.NORMAL);
    Plant skew = Plant.plain(PourShape.gamma(4, false));
    Plant below = Plant.plain(PourShape.gamma(4, true));
    Plant t10 = Plant.plain(PourShape.student(10));
    Plant t5 = Plant.plain(PourShape.student(5));
    return new Table(
            "False alarms, over the budget",
            "scenario | all | pours | molds | sides | wheel | scatter")
        .row("alarms-normal", alarms(normal))
        .row("alarms-skew0.5", alarms(Plant.plain(PourShape.gamma(16, false))))
        .row("alarms-skew1", alarms(skew))
        .row("alarms-skew-1", alarms(below))
        .row("alarms-t10", alarms(t10))
        .row("alarms-t5", alarms(t5))
        .row("alarms-skew1-budget0.2", alarms(new Watched(skew, 0.2, 1), 400))
        .row("alarms-skew-1-budget0.2", alarms(new Watched(below, 0.2, 1), 400))
        .row("alarms-t10-budget0.2", alarms(new Watched(t10, 0.2, 1), 400))
        .row("alarms-t5-budget0.2", alarms(new Watched(t5, 0.2, 1), 400))
        .row("alarms-t5-two-characteristics", alarms(new Watched(t5, 1, 2), 400))
        .row("alarms-wild2%", alarms(Plant.plain(PourShape.wild(0.02, 5))))
        .row("alarms-normal-to-0.1kg", alarms(normal.withRounding(0.1)))
        .row("alarms-normal-to-0.5kg", alarms(normal.withRounding(0.5)))
        .row("alarms-normal-to-1kg", alarms(normal.withRounding(1)))
        .row("alarms-t5-to-0.5kg", alarms(t5.withRounding(0.5)))
        .row(
            "alarms-plant-like",
            alarms(t5.withPourPhi(0.2).withRounding(0.5).withTwoSides().withGaps(0.05, 80)))
        .row("alarms-wear", alarms(normal.withWear(0.85, false)))
        .row("alarms-wear-level-kept", alarms(normal.withWear(0.85, true)))
        .row("alarms-normal-base60", alarms(new Watched(normal), 60))
        .row("alarms-t5-base60", alarms(new Watched(t5), 60))
        .row("alarms-normal-base1500", alarms(new Watched(normal), 1500))
        .row("alarms-t5-base1500", alarms(new Watched(t5), 1500));
  }

  private static Table delays() {
    Table table =
        new Table(
            "A mold shifts by some sigma of a pour: turns until it is named. The best knows the"
                + " wheel, takes pours as normal and has the whole budget",
            "scenario | ours | best | ours over best | ours over ours with normal pours");
    Map<String, PourShape> shapes = new LinkedHashMap<>();
    shapes.put("normal", PourShape.NORMAL);
    shapes.put("skew1", PourShape.gamma(4, false));
    shapes.put("t5", PourShape.student(5));
    for (double sigma : new double[] {1, 2}) {
      shapes.forEach(
          (name, shape) ->
              table.row(
                  "delay-" + name + "-" + (int) sigma + "sigma",
                  (wheels, seed) -> PlantDelays.mold(Plant.plain(shape), sigma, wheels, seed)));
      table.row(
          "delay-skew1-" + (int) sigma + "sigma-low",
          (wheels, seed) ->
              PlantDelays.mold(Plant.plain(PourShape.gamma(4, false)), -sigma, wheels, seed));
    }
    return table;
  }

  private static List<Table> tables() {
    Plant normal = Plant.plain(PourShape.NORMAL);
    Plant slow = normal.withTurnPhi(0.55);
    Table audits =
        new Table(
                "A lasting fault of 2 to 4 turn sigma of the whole wheel, in the record that is its"
                    + " own base; other episodes a record",
                "scenario | found | others | pours | molds | sides | wheel | scatter")
            .row("audit-260", (n, s) -> PlantFaults.wheelFault(slow, 260, 60, 40, 85, n, s))
            .row("audit-160", (n, s) -> PlantFaults.wheelFault(slow, 160, 40, 30, 60, n, s));
    Table sides =
        new Table(
                "One of two ladle sides off: turns until it is named; the best has the side chart's"
                    + " budget",
                "scenario | ours | best | ours over best | missed of 50 | missed by the best, of 50"
                    + " | wheel blamed first (share) | other side blamed first (share) | trials")
            .row("side-0.8kg", (n, s) -> PlantDelays.side(0.8, n, s))
            .row("side-1.6kg", (n, s) -> PlantDelays.side(1.6, n, s));
    Table scatter =
        new Table(
                "Pours scatter as usual, or 1.5 times as much, for 100 turns: episodes that begin meanwhile",
                "scenario | all | pours | molds | sides | wheel | scatter | wheels without an"
                    + " episode of scatter")
            .row("scatter-1", (n, s) -> PlantFaults.scatter(normal, 1, n, s))
            .row("scatter-1.5", (n, s) -> PlantFaults.scatter(normal, 1.5, n, s));
    Table gross =
        new Table(
            "Some of 40 molds step by 8 to 15 pour sigma in the middle of a record of 300 turns"
                + " that is its own base",
            "scenario | molds told, onset within 3 turns | wheel told as high there (share) |"
                + " episodes before the step | sound molds told as shifted there");
    for (boolean bothSigns : new boolean[] {true, false}) {
      for (int faulty : new int[] {4, 13, 36}) {
        gross.row(
            "gross-" + faulty + (bothSigns ? "-either-sign" : "-all-high"),
            (n, s) -> PlantFaults.gross(normal.withMolds(40), faulty, bothSigns, n, s));
      }
    }
    return List.of(falseAlarms(), delays(), audits, sides, scatter, gross);
  }

  /**
   * Prints the tables.
   *
   * @param args how many wheels for each row (default 60), the first seed (default 1), and what the
   *     names of rows must begin with (default: all)
   */
  public static void main(String[] args) {
    int wheels = args.length > 0 ? Integer.parseInt(args[0]) : 60;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
    String wanted = args.length > 2 ? args[2] : "";
    System.out.println(wheels + " wheels a row, seeds from " + seed);
    for (Table table : tables()) {
      if (table.rows().keySet().stream().noneMatch(name -> name.startsWith(wanted))) {
        continue;
      }
      System.out.println();
      System.out.println(table.title() + ":");
      System.out.println();
      System.out.println("| " + table.heading() + " |");
      System.out.println("|" + "---|".repeat(table.heading().split("\\|", -1).length));
      table
          .rows()
          .forEach(
              (name, row) -> {
                if (name.startsWith(wanted)) {
                  System.out.println("| " + name + " | " + row.of(wheels, seed) + " |");
                }
              });
    }
  }
}
