package org.evenpour.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import org.evenpour.casting.Setting;
import org.evenpour.column.IntColumn;
import org.evenpour.control.Episode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Published analyses of variance, and made records in which it is known what crews do. */
class LevelEffectsTest {
  private static final int CREWS = 4;
  private static final double NOT_THEN = Double.NaN;

  /** What each crew truly does, in kg; their mean is 0. */
  private static final double[] TRULY = {0.9, -0.3, 0.1, -0.7};

  /** Visits of three turns each, all with the visit's mean. */
  private static LevelEffects ofVisits(List<double[]> byLevel) {
    List<Double> turns = new ArrayList<>();
    List<Integer> labels = new ArrayList<>();
    int most = byLevel.stream().mapToInt(visits -> visits.length).max().orElseThrow();
    for (int i = 0; i < most; i++) {
      for (int label = 0; label < byLevel.size(); label++) {
        if (i < byLevel.get(label).length && !Double.isNaN(byLevel.get(label)[i])) {
          for (double off : new double[] {-0.01, 0, 0.01}) {
            turns.add(byLevel.get(label)[i] + off);
            labels.add(label);
          }
        }
      }
    }
    return LevelEffects.without(
        turns.stream().mapToDouble(x -> x).toArray(),
        labels.stream().mapToInt(x -> x).toArray(),
        0,
        0);
  }

  /**
   * NIST StRD, certified residual s.d. of two one-way analyses
   * (shared/reference/strd-certified.csv); p and the quantile of t are SciPy's {@code f.sf} of the
   * certified F and {@code t.ppf}.
   */
  @ParameterizedTest
  @CsvSource({
    "SiRstv,5,20,0.104076068334656,0.34944749340219294,2.085963447265864,1e-9",
    "AtmWtAg,2,46,0.0000151048314446410,0.00023268444833892546,2.012895598919429,1e-6"
  })
  void comparesAsTheAnalysesOfNistDo(
      String dataset, int k, int degrees, double sd, double p, double t, double digits)
      throws Exception {
    List<List<Double>> values = new ArrayList<>();
    try (var in =
            Objects.requireNonNull(
                getClass().getResourceAsStream("/org/evenpour/shared/reference/strd-anova.csv"));
        var reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String line : reader.lines().filter(one -> one.startsWith(dataset)).toList()) {
        String[] cells = line.split(",", -1);
        int treatment = Integer.parseInt(cells[1]);
        while (values.size() < treatment) {
          values.add(new ArrayList<>());
        }
        values.get(treatment - 1).add(Double.parseDouble(cells[2]));
      }
    }
    LevelEffects found =
        ofVisits(values.stream().map(one -> one.stream().mapToDouble(x -> x).toArray()).toList());
    assertThat(found.degreesOfFreedom()).isEqualTo(degrees);
    assertThat(found.sd() / sd).isCloseTo(1, within(digits));
    assertThat(found.p() / p).isCloseTo(1, within(20 * digits));
    assertThat(found.levels()).hasSize(k);
    int n = found.levels().get(0).visits();
    // All levels came equally often.
    double half = t * sd * Math.sqrt((1 - 1.0 / k) / n);
    for (LevelEffects.Level level : found.levels()) {
      assertThat(found.half(level) / half).isCloseTo(1, within(digits));
    }
    double apart = Objects.requireNonNull(found.between(0, 1)).half();
    assertThat(apart / (t * sd * Math.sqrt(2.0 / n))).isCloseTo(1, within(digits));
  }

  /**
   * Levels that came 3, 2 and 4 times and one that came once; s.d., p and errors by SciPy and NumPy
   * (contrasts of the group means).
   */
  @Test
  void letsALevelThatCameOnceTakeNoPart() {
    LevelEffects found =
        ofVisits(
            List.of(
                new double[] {1.0, 2.5, NOT_THEN, 3.1},
                new double[] {2.2, NOT_THEN, 4.0},
                new double[] {0.3, 1.1, 0.9, 2.0},
                new double[] {7.0}));
    assertThat(found.degreesOfFreedom()).isEqualTo(6);
    assertThat(found.sd()).isCloseTo(0.9528466123498927, within(1e-12));
    assertThat(found.p()).isCloseTo(0.11144290803079615, within(1e-12));
    double[] effects = {0.075, 0.975, -1.05, 4.875};
    double[] errors = {
      0.45843854011386126, 0.5104955532387557, 0.4300534706921001, 1.008564788250495
    };
    for (int i = 0; i < effects.length; i++) {
      LevelEffects.Level level = found.levels().get(i);
      assertThat(level.effect()).isCloseTo(effects[i], within(1e-12));
      assertThat(level.error()).isCloseTo(errors[i], within(1e-12));
      assertThat(level.cameAgain()).isEqualTo(i < 3);
    }
  }

  /** A record of visits of 6 to 14 turns, crews in no fixed order, never the same twice running. */
  private record Made(double[] turns, int[] labels) {
    static Made of(long seed, double[] truly, double wander) {
      SplittableRandom random = new SplittableRandom(seed);
      double[] turns = new double[480];
      int[] labels = new int[turns.length];
      int crew = 0;
      int left = 0;
      double level = 0;
      for (int t = 0; t < turns.length; t++) {
        if (left-- == 0) {
          crew = (crew + 1 + random.nextInt(CREWS - 1)) % CREWS;
          left = 5 + random.nextInt(9);
        }
        level = 0.97 * level + wander * random.nextGaussian();
        labels[t] = crew;
        turns[t] = 390 + truly[crew] + level + 0.4 * random.nextGaussian();
      }
      return new Made(turns, labels);
    }

    LevelEffects effects() {
      return LevelEffects.without(turns, labels, 0, 0);
    }
  }

  /**
   * A level that wanders by an s.d. of 1.2 kg, turn after turn by 0.3 kg, is alike at neighbours:
   * the intervals are wider than they would have to be.
   */
  @ParameterizedTest
  @CsvSource({"0,733,787,181,199", "0.3,760,800,190,200"})
  void intervalsHoldTheTruthNineteenTimesInTwenty(
      double wander, int least, int most, int leastApart, int mostApart) {
    int inside = 0;
    int apartInside = 0;
    for (int seed = 0; seed < 200; seed++) {
      LevelEffects found = Made.of(seed, TRULY, wander).effects();
      for (LevelEffects.Level level : found.levels()) {
        inside += Math.abs(level.effect() - TRULY[level.label()]) < found.half(level) ? 1 : 0;
      }
      LevelEffects.Difference apart = Objects.requireNonNull(found.between(3, 0));
      apartInside += Math.abs(apart.by() - (TRULY[0] - TRULY[3])) < apart.half() ? 1 : 0;
    }
    // 95 % of 800 and of 200, where nothing wanders within three standard errors (levels of one
    // record hang together).
    assertThat(inside).isBetween(least, most);
    assertThat(apartInside).isBetween(leastApart, mostApart);
  }

  @ParameterizedTest
  @CsvSource({"0,1,19", "0.3,0,10"})
  void crewsThatDoNotDifferAreTakenToDoSoOneTimeInTwenty(double wander, int least, int most) {
    int proven = 0;
    for (int seed = 1000; seed < 1200; seed++) {
      proven += Made.of(seed, new double[CREWS], wander).effects().p() < 0.05 ? 1 : 0;
    }
    assertThat(proven).isBetween(least, most); // 10, give or take three standard errors
  }

  @Test
  void crewsThatDifferAreFoundToDoSo() {
    int proven = 0;
    for (int seed = 0; seed < 200; seed++) {
      proven += Made.of(seed, TRULY, 0.1).effects().p() < 0.05 ? 1 : 0;
    }
    assertThat(proven).isGreaterThan(190);
  }

  /**
   * Wash batches come in pairs, each pair for a quarter of the record, on a level that drifts: the
   * drift is no batch's effect, though every batch came three times.
   */
  @Test
  void whatCameBackOnlySoonAfterIsNotCompared() {
    double[] turns = new double[480];
    int[] batch = new int[turns.length];
    Arrays.setAll(turns, t -> 390 + 0.01 * t + 0.1 * Math.sin(t));
    Arrays.setAll(batch, t -> t / 120 * 2 + t / 20 % 2);
    LevelEffects pairs = LevelEffects.without(turns, batch, 0, 0);
    assertThat(pairs.levels()).hasSize(8).allMatch(one -> one.visits() == 3 && !one.cameAgain());
    assertThat(pairs.isKnown()).isFalse();
    // With two that come all the time, a late one has the error of a single visit.
    Arrays.setAll(batch, t -> t >= 400 && t / 10 % 3 == 2 ? 2 : t / 10 % 2);
    LevelEffects found = LevelEffects.without(turns, batch, 0, 0);
    LevelEffects.Level late = found.levels().get(2);
    assertThat(late.visits()).isEqualTo(3);
    assertThat(late.cameAgain()).isFalse();
    assertThat(late.error()).isGreaterThan(found.sd());
  }

  /** With the variance that truly lies between crews, weighed by their turns. */
  @Test
  void theVarianceIsThatOfTheLevelsLessWhatChanceMakes() {
    double sum = 0;
    double none = 0;
    int records = 200;
    for (int seed = 0; seed < records; seed++) {
      sum += Made.of(seed, TRULY, 0).effects().variance();
      none += Made.of(seed, new double[CREWS], 0).effects().variance();
    }
    double truly = Arrays.stream(TRULY).map(x -> x * x).average().orElseThrow();
    assertThat(sum / records).isCloseTo(truly, within(0.02));
    assertThat(none / records).isCloseTo(0, within(0.001));
  }

  @Test
  void cannotTellWhereEachCameOnceOrNothingChanged() {
    double[] turns = Made.of(1, TRULY, 0).turns();
    int[] batch = new int[turns.length];
    Arrays.setAll(batch, t -> t / 60);
    LevelEffects once = LevelEffects.without(turns, batch, 0, 0);
    assertThat(once.isKnown()).isFalse();
    assertThat(once.p()).isNaN();
    assertThat(once.levels()).hasSize(8).allMatch(level -> level.visits() == 1);
    assertThat(once.between(0, 1)).isNull();
    assertThat(LevelEffects.without(turns, new int[turns.length], 0, 0).isKnown()).isFalse();
    // Three levels, of which one came twice: nothing to compare it with.
    Arrays.setAll(batch, t -> t < 400 ? t / 200 : t < 440 ? 0 : 2);
    assertThat(LevelEffects.without(turns, batch, 0, 0).isKnown()).isFalse();
  }

  @Test
  void aVisitEndsWithAnotherLevelAndNotWithATurnThatIsNotWrittenDown() {
    double[] turns = {1, 1, 1, Double.NaN, 9, 1, 5, 5, 5, 2, 2, 2, 7, 7, 6, 6, 6, 3, 3};
    int[] labels = {0, 0, 0, 0, -1, 0, 1, 1, 1, 0, 0, 0, 0, 0, 1, 1, 1, 0, 0};
    List<LevelEffects.Level> levels = LevelEffects.without(turns, labels, 0, 0).levels();
    // The last visit is too short; the turn without a level counts for nobody.
    assertThat(levels.get(0).visits()).isEqualTo(2);
    assertThat(levels.get(0).turns()).isEqualTo(9);
    assertThat(levels.get(1).visits()).isEqualTo(2);
    assertThat(levels.get(1).turns()).isEqualTo(6);
  }

  private static Cells crews(double[] truly) {
    SplittableRandom random = new SplittableRandom(20261125);
    double[][] e = new double[480][Cells.MOLDS];
    for (double[] turn : e) {
      Arrays.setAll(turn, m -> random.nextGaussian());
    }
    // In the wheel's signal, turns 240 to 279, crews follow each other as ever.
    return new Cells(
            480, (t, m) -> 390 + m + e[t][m] + truly[crew(t)] + (t >= 240 && t < 280 ? 4 : 0))
        .category("crew", (t, m) -> crew(t));
  }

  private static int crew(int turn) {
    return turn / 12 % CREWS;
  }

  private static Finding beside(Cells cells, Episode episode) {
    return cells.examine(episode).stream()
        .filter(
            finding -> {
              Setting setting = finding.setting();
              return setting != null && setting.name().equals("crew");
            })
        .findFirst()
        .orElseThrow();
  }

  /** A signal of another cause through three visits costs certainty, and biases nothing. */
  @Test
  void learnsCrewsWithSignalsWhateverTheMolds() {
    TurnGrid grid = crews(TRULY).grid();
    Linker linker = new Linker(grid, List.of());
    linker.signals(
        grid.record().characteristics().get(0),
        List.of(Cells.episode(Episode.Chart.WHEEL, -1, 240, 279, 4)));
    Setting crew = grid.record().settings().get(0);
    IntColumn categories = Objects.requireNonNull(crew.categories());
    LevelEffects found = linker.levels(grid.record().characteristics().get(0), crew, categories);
    assertThat(found.p()).isLessThan(0.01);
    for (LevelEffects.Level level : found.levels()) {
      assertThat(level.effect()).isCloseTo(TRULY[level.label()], within(found.half(level)));
      assertThat(level.turns()).isEqualTo(480 / CREWS);
    }
  }

  /** The change of turn 240 is from crew 3 to crew 0: +1.6 kg of 4. */
  @Test
  void aChangeOfCrewExplainsWhatItsCrewsDo() {
    Finding crew = beside(crews(TRULY), Cells.episode(Episode.Chart.WHEEL, -1, 240, 279, 4));
    assertThat(crew.expected()).isCloseTo(1.6, within(0.3));
    assertThat(crew.share()).isCloseTo(0.4, within(0.08));
    assertThat(crew.shareLow()).isBetween(0.2, 0.4);
    assertThat(crew.shareHigh()).isBetween(0.4, 0.6);
    // It is never more than that: crews always change.
    assertThat(crew.grade(0.001)).isEqualTo(Finding.Grade.MOVED);
  }

  @Test
  void aChangeBetweenCrewsThatDoNotDifferIsCleared() {
    Finding crew =
        beside(crews(new double[CREWS]), Cells.episode(Episode.Chart.WHEEL, -1, 240, 279, 4));
    assertThat(crew.shareHigh()).isLessThan(0.3);
    assertThat(crew.grade(0.001)).isEqualTo(Finding.Grade.NONE);
  }

  @Test
  void aSignalOfOneMoldAsksNothingOfTheWheelsLevels() {
    Finding crew = beside(crews(TRULY), Cells.episode(Episode.Chart.MOLD, 4, 240, 279, 4));
    assertThat(crew.expected()).isNaN();
    assertThat(crew.grade(0.001)).isEqualTo(Finding.Grade.MOVED);
  }

  /** A visit that is left out teaches nothing: as if none of its turns were known. */
  @Test
  void leavesOutTheVisitsThatItIsAskedOf() {
    SplittableRandom random = new SplittableRandom(5);
    double[] turns = random.doubles(96).toArray();
    int[] labels = new int[turns.length];
    Arrays.setAll(labels, t -> t / 8 % 3);
    double[] unknown = turns.clone();
    Arrays.fill(unknown, 32, 48, Double.NaN);
    // From the last turn of the fifth visit to the first of the sixth: both go as a whole.
    LevelEffects found = LevelEffects.without(turns, labels, 39, 41);
    LevelEffects expected = LevelEffects.without(unknown, labels, 0, 0);
    assertThat(found).isEqualTo(expected).isNotEqualTo(LevelEffects.without(turns, labels, 0, 0));
    assertThat(LevelEffects.without(turns, labels, 40, 48))
        .isNotEqualTo(expected)
        .isNotEqualTo(LevelEffects.without(turns, labels, 0, 0));
  }

  /** As against the mean of the others that came again, worked out by hand. */
  @Test
  void comparesALevelWithTheMeanOfTheOthers() {
    LevelEffects found =
        ofVisits(
            List.of(
                new double[] {4.0, 5.0, 6.0},
                new double[] {1.0, 2.0, 3.0},
                new double[] {2.0, 3.0, 4.0}));
    LevelEffects.Difference difference = Objects.requireNonNull(found.besideOthers(0));
    assertThat(difference.by()).isCloseTo(2.5, within(1e-12));
    // s = 1 within each; t = 2.446911851 of 6 degrees (SciPy t.ppf(0.975, 6)).
    assertThat(difference.half())
        .isCloseTo(2.446911851 * Math.sqrt(1.0 / 3 + 1.0 / 6), within(1e-8));
    // 2.5/0.70711 = 3.5355: p = 0.0123, beyond 5 % but not beyond three standard errors.
    assertThat(difference.isProven()).isFalse();
  }
}
