package org.evenpour.report;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.casting.SetAsideRow;
import org.evenpour.casting.Specification;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CapabilityReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.AuditReport.Monitoring;
import org.evenpour.findings.AuditReport.Normality;
import org.evenpour.findings.AuditReport.Overall;
import org.evenpour.findings.AuditReport.SettingReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.AuditReport.TurnPoint;
import org.evenpour.findings.AuditReport.Variance;
import org.evenpour.findings.AuditReport.WheelChart;
import org.evenpour.findings.CapabilityInFull;
import org.evenpour.stats.Normal;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/** Audit reports made by hand, of a plant that does not exist. */
public final class Reports {
  private static final Instant START = Instant.parse("2024-05-12T06:00:00Z");

  private static final Map<String, Long> TESTS =
      Map.of("nine-one-side", 4L, "beyond-limit", 2L, "two-of-three-outer", 1L);

  private Reports() {}

  /** A wheel of 26 molds with signals, settings, events and rows set aside. */
  public static AuditReport plant() {
    return plant(230);
  }

  /** The same, over so many turns. */
  public static AuditReport plant(int turns) {
    return new AuditReport(
        new AuditReport.Log(
            List.of("n2-may.csv"), 5992, 5980, 12, START, at(turns), List.of("N2"), 26, turns),
        List.of(
            characteristic("mass", "kg", new Specification(378.0, 388.0, 398.0), 388.2, 2.6, turns),
            characteristic(
                "thickness", "mm", new Specification(40.7, 43.2, 45.7), 43.25, 0.62, turns),
            characteristic("wedge", "mm", new Specification(null, null, 3.0), 1.1, 0.45, turns)),
        List.of(washSignal(), moldChange(), wheelUp(), singlePour()),
        List.of(),
        List.of(
            new SettingReport(
                "N2",
                "wash_volume_ml",
                "ml",
                "wash",
                0,
                false,
                5970,
                10,
                412.5,
                18.2,
                355.0,
                460.0,
                0,
                List.of(
                    new Effect("thickness", 0.0275, 0.021, 0.034),
                    new Effect("mass", null, null, null))),
            new SettingReport(
                "N2", "ladle", "", "", 0, true, 5980, 0, null, null, null, null, 2, List.of())),
        List.of(
            new CastingEvent(at(40), "N2", "9", "mold_changed", "new mold, serial 881", ""),
            new CastingEvent(at(200), "N2", null, "wheel_stopped", "", "")),
        List.of(
            new SetAsideRow(
                "n2-may.csv",
                117,
                Remark.verbatim("the mass 38.9 kg is outside the plausible 200 to 600 kg"),
                "2024-05-12T09:00:00Z,N2,7,38.9")),
        List.of(Remark.verbatim("The limits rest on the first 100 turns of this log.")),
        List.of(),
        List.of());
  }

  /** Nothing is defined that may be undefined. */
  public static AuditReport bare() {
    CharacteristicReport characteristic =
        new CharacteristicReport(
            "",
            "mass",
            "kg",
            "kg",
            Specification.NONE,
            new Overall(1, 388.0, null, 388.0, 388.0, null, null),
            new Variance(null, null, null, null, null, null, null),
            bare(false),
            null,
            new Monitoring("none", 0, null, null, null, null, 1, null),
            List.of(
                new MoldReport(
                    "1", 1, 388.0, null, null, 388.0, null, null, Map.of(), null, null, null, null,
                    null)),
            List.of());
    Signal signal =
        new Signal(
            "S1",
            "",
            "mass",
            Scope.WHEEL,
            null,
            null,
            1,
            1,
            START,
            START,
            1,
            START,
            true,
            List.of(),
            Direction.HIGH,
            1,
            null,
            null,
            1,
            null,
            List.of());
    return new AuditReport(
        new AuditReport.Log(List.of(), 1, 1, 0, START, START, List.of(""), 1, 1),
        List.of(characteristic),
        List.of(signal),
        List.of(),
        List.of(
            new SettingReport(
                "",
                "crew",
                "",
                "",
                0,
                true,
                0,
                1,
                null,
                null,
                null,
                null,
                0,
                List.of(new Effect("mass", null, null, null)))),
        List.of(new CastingEvent(START, "", null, "other", "", "")),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  /** Every text is one that a file or a terminal could stumble over. */
  public static AuditReport nasty() {
    String formula = "=HYPERLINK(\"http://example.org\",\"1+1\")";
    String control = "a\u0000b\u001b[31mc\td\re\nf\u2028g";
    String emoji = "caf\u00e9 \ud83d\ude00 \ud83d";
    String huge = "=" + "x".repeat(40_000);
    AuditReport plant = plant(3);
    List<CharacteristicReport> characteristics = new ArrayList<>();
    for (CharacteristicReport good : plant.characteristics()) {
      List<MoldReport> molds = new ArrayList<>();
      for (String label : List.of("=1+1", "+cmd", "-2", "@x", "007", "12", emoji, control)) {
        molds.add(mold(label, good.specification(), 388, 2, 1));
      }
      characteristics.add(
          new CharacteristicReport(
              formula,
              good.name(),
              good.unit(),
              good.displayUnit(),
              good.specification(),
              good.overall(),
              good.variance(),
              bare(false),
              good.wheelChart(),
              good.monitoring(),
              molds,
              List.of()));
    }
    Link link =
        new Link(
            formula,
            false,
            "=group",
            "=unit",
            Evidence.STRONG,
            1.0,
            1.0,
            0.5,
            0.1,
            0.9,
            0.01,
            2,
            "=look{0} " + control,
            List.of());
    Signal signal =
        new Signal(
            "S1",
            formula,
            "mass",
            Scope.MOLD,
            "@x",
            "+side",
            1,
            3,
            START,
            START,
            2,
            START,
            true,
            List.of("=test"),
            Direction.HIGH,
            2.5,
            2.0,
            3.0,
            1.2,
            null,
            List.of(link));
    return new AuditReport(
        new AuditReport.Log(
            List.of(formula), 3, 1, 2, START, START, List.of(formula, "[a]:*?/\\'"), 8, 3),
        characteristics,
        List.of(signal),
        List.of(),
        List.of(
            new SettingReport(
                formula,
                "=setting",
                "=unit",
                "@group",
                0,
                true,
                1,
                0,
                null,
                null,
                null,
                null,
                1,
                List.of())),
        List.of(new CastingEvent(START, "-wheel", "+mold", "=event", control, "")),
        List.of(
            new SetAsideRow("=log", 1, Remark.verbatim(formula), huge),
            new SetAsideRow("@log", 2, Remark.verbatim(control), emoji + "\ud83d")),
        Stream.of(formula, huge, control).map(Remark::verbatim).toList(),
        List.of(),
        List.of());
  }

  private static Signal washSignal() {
    return new Signal(
        "S1",
        "N2",
        "thickness",
        Scope.MOLD,
        "17",
        null,
        214,
        230,
        at(214),
        at(230),
        212,
        at(212),
        true,
        List.of("shift"),
        Direction.LOW,
        -1.1,
        -1.3,
        -0.9,
        -2.4,
        null,
        List.of(
            new Link(
                "wash_volume_ml",
                false,
                "wash",
                "ml",
                Evidence.STRONG,
                -40.2,
                -1.1055,
                1.005,
                0.8,
                1.2,
                0.002,
                212,
                "Check first that the mold is dry. Look at its spray nozzle.",
                List.of()),
            new Link(
                "melt_temp_c",
                false,
                "melt",
                "c",
                Evidence.NONE,
                0.3,
                0.01,
                -0.01,
                null,
                null,
                0.8,
                null,
                "",
                List.of())));
  }

  private static Signal moldChange() {
    return new Signal(
        "S2",
        "N2",
        "wedge",
        Scope.MOLD,
        "9",
        null,
        43,
        120,
        at(43),
        at(120),
        40,
        at(40),
        false,
        List.of("shift"),
        Direction.HIGH,
        0.62,
        0.5,
        0.74,
        1.9,
        null,
        List.of(
            new Link(
                "mold_changed",
                true,
                "",
                "",
                Evidence.MOVED,
                null,
                null,
                null,
                null,
                null,
                0.01,
                40,
                "Check that the new mold stands level.",
                List.of())));
  }

  private static Signal wheelUp() {
    return new Signal(
        "S3",
        "N2",
        "mass",
        Scope.WHEEL,
        null,
        null,
        226,
        230,
        at(226),
        at(230),
        224,
        at(224),
        true,
        List.of("beyond-limit"),
        Direction.HIGH,
        2.1,
        1.5,
        2.7,
        3.1,
        null,
        List.of());
  }

  private static Signal singlePour() {
    return new Signal(
        "S4",
        "N2",
        "mass",
        Scope.POUR,
        "5",
        null,
        99,
        99,
        at(99),
        at(99),
        99,
        at(99),
        false,
        List.of("pour"),
        Direction.LOW,
        -14.2,
        null,
        null,
        -5.6,
        null,
        List.of());
  }

  /** A mold's signal, alike but for these. */
  public static Signal moldSignal(String id, String mold, int sinceTurn, double size) {
    Signal like = washSignal();
    return new Signal(
        id,
        like.wheel(),
        like.characteristic(),
        like.scope(),
        mold,
        null,
        sinceTurn + 2,
        230,
        at(sinceTurn + 2),
        at(230),
        sinceTurn,
        at(sinceTurn),
        true,
        like.tests(),
        size < 0 ? Direction.LOW : Direction.HIGH,
        size,
        size - 0.2,
        size + 0.2,
        size * 2,
        null,
        like.links());
  }

  /** The report with other signals. */
  public static AuditReport with(AuditReport report, List<Signal> signals) {
    return new AuditReport(
        report.log(),
        report.characteristics().stream().map(one -> judged(one, signals)).toList(),
        signals,
        report.verdicts(),
        report.settings(),
        report.events(),
        report.setAside(),
        report.notes(),
        List.of(),
        List.of());
  }

  /** Stable where no signal but single pours speaks against it. */
  private static CharacteristicReport judged(CharacteristicReport one, List<Signal> signals) {
    boolean isStable =
        signals.stream()
            .noneMatch(
                signal ->
                    signal.scope() != Scope.POUR && signal.characteristic().equals(one.name()));
    return new CharacteristicReport(
        one.wheel(),
        one.name(),
        one.unit(),
        one.displayUnit(),
        one.specification(),
        one.overall(),
        one.variance(),
        bare(isStable),
        one.wheelChart(),
        one.monitoring(),
        one.molds(),
        List.of());
  }

  /** When a turn began: every 14 minutes and 20 seconds one. */
  public static Instant at(int turn) {
    return START.plusSeconds(860L * turn);
  }

  private static CharacteristicReport characteristic(
      String name, String unit, Specification specification, double mean, double sd, int turns) {
    List<MoldReport> molds = new ArrayList<>();
    for (int number = 1; number <= 26; number++) {
      double offset = sd * 0.8 * Math.sin(number * 2.1);
      molds.add(mold(Integer.toString(number), specification, mean, sd * 0.8, offset));
    }
    List<TurnPoint> points = new ArrayList<>();
    for (int turn = 1; turn <= turns; turn++) {
      double effect = sd * 0.35 * (Math.sin(turn * 0.9) + Math.sin(turn * 0.31));
      double up = turn >= 224 ? sd * 0.8 : 0;
      points.add(new TurnPoint(turn, at(turn), mean + effect + up, 26, turn == 1));
    }
    WheelChart chart =
        new WheelChart(mean, mean - sd * 0.9, mean + sd * 0.9, sd * 0.3, TESTS, 0.31, points);
    Overall overall =
        new Overall(
            5980,
            mean,
            sd,
            mean - 4 * sd,
            mean + 4 * sd,
            new Normality(0.41, 0.3400000000000001),
            capability(specification, mean, sd * 0.8, sd, 0.0032));
    double variance = sd * sd;
    return new CharacteristicReport(
        "N2",
        name,
        unit,
        unit,
        specification,
        overall,
        new Variance(variance * 0.3, variance * 0.2, variance * 0.5, 31.7, 25, 5954, 1.0E-120),
        bare(false),
        chart,
        new Monitoring(
            "proposed by this audit",
            100,
            sd * 0.7,
            sd * 0.3,
            6.9,
            4.8,
            1,
            new AuditReport.Finds(2, 9.25, 11.5)),
        molds,
        List.of());
  }

  private static MoldReport mold(
      String label, Specification specification, double wheelMean, double sigma, double offset) {
    double mean = wheelMean + offset;
    double sd = sigma * 1.1;
    return new MoldReport(
        label,
        230,
        mean,
        sd,
        sigma,
        mean,
        mean - 3 * sigma,
        mean + 3 * sigma,
        TESTS,
        capability(specification, mean, sigma, sd, 2.0 / 230),
        offset,
        offset - sigma * 0.2,
        offset + sigma * 0.2,
        2L);
  }

  private static CapabilityReport capability(
      Specification specification, double mean, double within, double overall, double observed) {
    Double lower = specification.lower();
    Double upper = specification.upper();
    Estimate cpl = lower == null ? null : about((mean - lower) / (3 * within));
    Estimate cpu = upper == null ? null : about((upper - mean) / (3 * within));
    Estimate ppl = lower == null ? null : about((mean - lower) / (3 * overall));
    Estimate ppu = upper == null ? null : about((upper - mean) / (3 * overall));
    return new CapabilityReport(
        lower == null || upper == null ? null : about((upper - lower) / (6 * within)),
        smaller(cpl, cpu),
        cpl,
        cpu,
        lower == null || upper == null ? null : about((upper - lower) / (6 * overall)),
        smaller(ppl, ppu),
        null,
        (lower == null ? 0 : Normal.cdf((lower - mean) / overall))
            + (upper == null ? 0 : Normal.upperTail((upper - mean) / overall)),
        observed,
        null);
  }

  private static Estimate about(double value) {
    return new Estimate(value, value - 0.03, value + 0.03);
  }

  private static @Nullable Estimate smaller(@Nullable Estimate one, @Nullable Estimate other) {
    if (one == null || other == null) {
      return one == null ? other : one;
    }
    return one.value() < other.value() ? one : other;
  }

  /** Nothing but whether the process is stable. */
  private static CapabilityInFull bare(boolean isStable) {
    return new CapabilityInFull(isStable, null, null, List.of(), List.of(), List.of());
  }
}
