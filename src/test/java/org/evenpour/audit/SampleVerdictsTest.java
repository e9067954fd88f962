package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.CapabilityInFull;
import org.evenpour.findings.CapabilityInFull.Group;
import org.evenpour.findings.CapabilityInFull.Part;
import org.evenpour.findings.CapabilityInFull.WhatIf;
import org.evenpour.findings.MoldVerdict;
import org.evenpour.findings.MoldVerdict.Reason;
import org.evenpour.findings.MoldVerdict.Standing;
import org.evenpour.findings.MoldVerdict.Verdict;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The committed sample, whose truth says what was planted where. */
class SampleVerdictsTest {
  private static AuditReport report;

  @BeforeAll
  static void auditOnce() throws Exception {
    report = Audit.run(Sample.read(Sample.TORDILLA));
  }

  private static MoldVerdict of(String mold) {
    return report.verdicts().stream().filter(v -> v.mold().equals(mold)).findFirst().orElseThrow();
  }

  private static CharacteristicReport named(String name) {
    return report.characteristics().stream()
        .filter(c -> c.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void findsThatMoldSeventeenWears() {
    MoldVerdict worn = of("17");
    assertThat(worn.reason()).isIn(Reason.WEARS, Reason.TREND);
    assertThat(worn.verdict()).isIn(Verdict.REPLACE, Verdict.WATCH);
    assertThat(worn.characteristic()).isEqualTo("thickness");
    assertThat(report.verdicts())
        .filteredOn(v -> v.reason() == Reason.WEARS || v.reason() == Reason.TREND)
        .extracting(MoldVerdict::mold)
        .containsExactly("17");
  }

  @Test
  void watchesTheChangedMoldAndTheUnexplainedOne() {
    MoldVerdict changed = of("4");
    assertThat(changed.verdict()).isEqualTo(Verdict.WATCH);
    assertThat(changed.reason()).isEqualTo(Reason.STEP);
    assertThat(changed.serial()).isEqualTo("K404");
    assertThat(changed.isNew()).isTrue();
    assertThat(changed.castsOnMold()).isEqualTo(changed.casts()).isBetween(110L, 122L);
    var step = Objects.requireNonNull(Objects.requireNonNull(changed.standing("thickness")).step());
    // planted: −0.60 mm, of which the mold before had its own part
    assertThat(Objects.requireNonNull(step.low())).isLessThan(-0.5);
    assertThat(Objects.requireNonNull(step.high())).isGreaterThan(-0.7);
    assertThat(of("23").verdict()).isEqualTo(Verdict.WATCH);
    assertThat(of("23").signal()).isNotNull();
  }

  @Test
  void keepsMostMolds() {
    assertThat(report.verdicts()).hasSize(26);
    assertThat(report.verdicts())
        .filteredOn(v -> v.verdict() == Verdict.KEEP)
        .hasSizeGreaterThan(13);
  }

  /**
   * Whoever is leveled or dressed has a cavity that differs, and anodes out of tolerance for it.
   */
  @Test
  void dressesOnlyWhatTheFiguresCondemn() {
    List<MoldVerdict> dressed =
        report.verdicts().stream().filter(v -> v.verdict() == Verdict.LEVEL).toList();
    assertThat(dressed).isNotEmpty();
    for (MoldVerdict one : dressed) {
      Standing thickness = Objects.requireNonNull(one.standing("thickness"));
      Standing area = Objects.requireNonNull(one.standing("plan_area"));
      assertThat(thickness.standsOut()).isTrue();
      assertThat(Math.signum(thickness.offset())).isEqualTo(-Math.signum(area.offset()));
      assertThat(Objects.requireNonNull(Objects.requireNonNull(thickness.room()).high()))
          .isLessThan(1);
    }
  }

  @Test
  void splitsTheWholeSpreadAndNothingElse() {
    for (CharacteristicReport each : report.characteristics()) {
      List<Part> parts = each.inFull().parts();
      assertThat(parts).hasSize(4);
      assertThat(parts.stream().mapToDouble(Part::share).sum()).isCloseTo(1, within(1e-12));
      double sd = Objects.requireNonNull(each.overall().sd());
      assertThat(parts.stream().mapToDouble(Part::variance).sum())
          .isCloseTo(sd * sd, within(0.05 * sd * sd));
    }
    // the sides drift in mass (planted), and thickness is the molds'
    assertThat(share("mass", CapabilityInFull.Source.SIDE)).isGreaterThan(0.1);
    assertThat(share("thickness", CapabilityInFull.Source.MOLD)).isGreaterThan(0.6);
  }

  private static double share(String name, CapabilityInFull.Source source) {
    return named(name).inFull().parts().stream()
        .filter(p -> p.source() == source)
        .mapToDouble(Part::share)
        .sum();
  }

  @Test
  void saysWhatWouldBeLeftByTheArithmeticOfTheParts() {
    CharacteristicReport thickness = named("thickness");
    WhatIf best = thickness.inFull().whatIfs().get(0);
    assertThat(best.without()).isEqualTo(CapabilityInFull.Source.MOLD);
    double sd = Objects.requireNonNull(thickness.overall().sd());
    double left = sd * Math.sqrt(1 - share("thickness", CapabilityInFull.Source.MOLD));
    assertThat(best.sd()).isCloseTo(left, within(1e-12));
    assertThat(best.ppk())
        .isCloseTo(Math.min(46.2 - best.mean(), best.mean() - 43.2) / (3 * left), within(1e-9));
    var capability = Objects.requireNonNull(thickness.overall().capability());
    assertThat(best.ppkNow())
        .isCloseTo(Objects.requireNonNull(capability.ppk()).value(), within(1e-9));
  }

  @Test
  void breaksCapabilityDownAndLosesNoAnode() {
    CharacteristicReport mass = named("mass");
    for (String by : List.of("ladle", "charge", "crew")) {
      List<Group> groups = mass.inFull().groups().stream().filter(g -> g.by().equals(by)).toList();
      assertThat(groups).as(by).hasSizeGreaterThan(1);
      assertThat(groups.stream().mapToLong(Group::count).sum()).isEqualTo(mass.overall().count());
    }
  }

  @Test
  void givesPercentilesWhereNormalityIsRefused() {
    CharacteristicReport wedge = named("wedge");
    assertThat(wedge.inFull().isNormal()).isEqualTo(false);
    var by = Objects.requireNonNull(wedge.inFull().percentiles());
    assertThat(by.pp()).isNull(); // one-sided
    assertThat(Objects.requireNonNull(by.ppk()).value())
        .isCloseTo((2.5 - by.median()) / (by.high() - by.median()), within(1e-12));
    assertThat(wedge.inFull().isStable()).isFalse();
  }
}
