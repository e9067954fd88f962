package org.evenpour.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.evenpour.simulate.SimulatedFiles.Anode;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The effects that the table states are those that a sound log of four weeks shows. */
class EffectTest {
  private static final DecimalFormat SIGNED =
      new DecimalFormat("+0.000##;-0.000##", DecimalFormatSymbols.getInstance(Locale.ROOT));

  @TempDir static Path directory;
  private static List<Anode> anodes = List.of();

  @BeforeAll
  static void simulate() throws IOException {
    anodes = SimulatedFiles.of(directory, Scenario.week(21).withDays(28)).anodes();
  }

  @Test
  void pourRateRaisesMassByThreeKilogramsForHalfAKilogramASecond() {
    assertThat(0.5 * slopeWithinTurns("pour_rate_kg_s", Anode::mass, 0)).isBetween(2.8, 3.2);
  }

  @Test
  void sprayCoolsTheMoldForItsNextPourAndNotForThisOne() {
    ToDoubleFunction<Anode> moldTemperature = anode -> anode.number("mold_temp_c");
    assertThat(slopeWithinTurns("spray_flow_l_min", moldTemperature, 1)).isBetween(-0.65, -0.55);
    assertThat(slopeWithinTurns("spray_flow_l_min", moldTemperature, 0)).isBetween(-0.05, 0.05);
  }

  @Test
  void aHotterMoldCastsThinner() {
    assertThat(slopeWithinTurns("mold_temp_c", Anode::thickness, 0)).isBetween(-0.0155, -0.0115);
  }

  /** 10 mL are 2 µm, and what shows of them is chance: four standard errors of 23,000 anodes. */
  @Test
  void washMovesThicknessByMicrometers() {
    assertThat(slopeWithinTurns("wash_volume_ml", Anode::thickness, 0)).isBetween(-0.001, 0.001);
    assertThat(slopeWithinTurns("wash_volume_ml", Anode::thickness, 1)).isBetween(-0.001, 0.001);
  }

  /** Between turns, where charges, turn effects and water move too: only roughly −0.52 µm/ppm. */
  @Test
  void aMeltWithLessOxygenSwells() {
    Map<Integer, List<Anode>> turns = anodes.stream().collect(Collectors.groupingBy(Anode::turn));
    double[][] points =
        turns.values().stream()
            .filter(turn -> turn.size() > 22)
            .map(
                turn ->
                    new double[] {
                      turn.stream().mapToDouble(a -> a.number("oxygen_ppm")).average().orElse(0),
                      turn.stream().mapToDouble(Anode::thickness).average().orElse(0)
                          - turn.stream().mapToDouble(Anode::mass).average().orElse(0)
                              / Plant.MASS_PER_MM_KG
                    })
            .toArray(double[][]::new);
    assertThat(slope(points)).isBetween(-0.0008, -0.0003);
  }

  @Test
  void decoysActOnNothing() {
    for (String decoy : List.of("launder_level_mm")) {
      assertThat(slopeWithinTurns(decoy, Anode::mass, 0)).isBetween(-0.05, 0.05);
      assertThat(slopeWithinTurns(decoy, Anode::thickness, 0)).isBetween(-0.01, 0.01);
    }
  }

  /** The sigmas by which the truth tells a shift from the wheel's usual spread. */
  @Test
  void spreadsAreTheStatedOnes() {
    assertSpreads(Anode::mass, Plant.POUR_SIGMA_MASS_KG, Plant.TURN_SIGMA_MASS_KG);
    assertSpreads(Anode::thickness, Plant.POUR_SIGMA_THICKNESS_MM, Plant.TURN_SIGMA_THICKNESS_MM);
    assertSpreads(Anode::wedge, Plant.POUR_SIGMA_WEDGE_MM, Plant.TURN_SIGMA_WEDGE_MM);
  }

  private static void assertSpreads(
      ToDoubleFunction<Anode> value, double pourSigma, double turnSigma) {
    double[][] points =
        anodes.stream().map(a -> new double[] {value.applyAsDouble(a)}).toArray(double[][]::new);
    center(anodes, points, 0, Anode::mold);
    Map<Integer, Double> turnMeans = means(anodes, points, 0, Anode::turn);
    center(anodes, points, 0, Anode::turn);
    assertThat(sd(Stream.of(points).mapToDouble(point -> point[0]).toArray()))
        .isBetween(0.9 * pourSigma, 1.1 * pourSigma);
    assertThat(sd(turnMeans.values().stream().mapToDouble(mean -> mean).toArray()))
        .isBetween(0.8 * turnSigma, 1.2 * turnSigma);
  }

  private static double sd(double[] values) {
    double mean = DoubleStream.of(values).average().orElseThrow();
    return Math.sqrt(
        DoubleStream.of(values).map(v -> (v - mean) * (v - mean)).average().orElseThrow());
  }

  /** The document lists what the program does, no more and no less. */
  @Test
  void theDocumentListsEveryEffect() throws IOException {
    List<String> rows =
        Files.readAllLines(Path.of("docs", "methods", "simulated-wheel.md")).stream()
            .filter(line -> line.startsWith("| `") && line.contains("turn"))
            .map(line -> line.substring(0, line.lastIndexOf('|', line.length() - 2) + 1))
            .toList();
    assertThat(rows)
        .containsExactlyElementsOf(
            Stream.of(Effect.values())
                .map(
                    effect ->
                        String.format(
                            Locale.ROOT,
                            "| `%s` | `%s` | %s | %s |",
                            effect.setting(),
                            effect.actsOn(),
                            SIGNED.format(effect.size()),
                            effect.lagTurns() == 0 ? "this turn" : "next turn"))
                .toList());
  }

  @Test
  void everyEffectNamesAColumnOfTheLog() {
    for (Effect effect : Effect.values()) {
      assertThat(Pour.COLUMNS).contains(effect.setting());
      assertThat(effect.actsOn()).isIn("mass_kg", "thickness_mm", "mold_temp_c");
    }
  }

  /** The least-squares slope once each mold's and each turn's mean is taken out of both. */
  private static double slopeWithinTurns(
      String setting, ToDoubleFunction<Anode> response, int lagTurns) {
    Map<List<Integer>, Anode> byPlace =
        anodes.stream().collect(Collectors.toMap(a -> List.of(a.turn(), a.mold()), a -> a));
    List<Anode> used = new ArrayList<>();
    List<double[]> pairs = new ArrayList<>();
    for (Anode anode : anodes) {
      Anode acting = byPlace.get(List.of(anode.turn() - lagTurns, anode.mold()));
      if (acting != null) {
        used.add(anode);
        pairs.add(new double[] {acting.number(setting), response.applyAsDouble(anode)});
      }
    }
    double[][] points = pairs.toArray(double[][]::new);
    for (int axis = 0; axis < 2; axis++) {
      for (int round = 0; round < 3; round++) {
        center(used, points, axis, Anode::turn);
        center(used, points, axis, Anode::mold);
      }
    }
    return slope(points);
  }

  private static void center(
      List<Anode> used, double[][] points, int axis, ToIntFunction<Anode> key) {
    Map<Integer, Double> means = means(used, points, axis, key);
    for (int i = 0; i < points.length; i++) {
      points[i][axis] -= means.getOrDefault(key.applyAsInt(used.get(i)), 0.0);
    }
  }

  private static Map<Integer, Double> means(
      List<Anode> used, double[][] points, int axis, ToIntFunction<Anode> key) {
    return IntStream.range(0, points.length)
        .boxed()
        .collect(
            Collectors.groupingBy(
                i -> key.applyAsInt(used.get(i)),
                Collectors.averagingDouble(i -> points[i][axis])));
  }

  private static double slope(double[][] points) {
    double meanX = 0;
    double meanY = 0;
    for (double[] point : points) {
      meanX += point[0] / points.length;
      meanY += point[1] / points.length;
    }
    double xy = 0;
    double xx = 0;
    for (double[] point : points) {
      xy += (point[0] - meanX) * (point[1] - meanY);
      xx += (point[0] - meanX) * (point[0] - meanX);
    }
    return xy / xx;
  }
}
