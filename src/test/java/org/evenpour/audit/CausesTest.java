package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.casting.CauseMark.Verdict;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.CausesReport;
import org.evenpour.findings.CausesReport.Counted;
import org.evenpour.words.Remark;
import org.junit.jupiter.api.Test;

/** Signals made by hand: a turn is an hour, and turn 0 is at the start. */
class CausesTest {
  private static final Instant START = Instant.parse("2026-03-02T00:00:00Z");
  private static final Instant NOW = Instant.parse("2026-03-20T00:00:00Z");
  private static final Cause WASH = new Cause(Kind.SETTING, "wash_volume_ml");
  private static final Cause POUR = new Cause(Kind.SETTING, "pour_rate_kg_s");
  private static final Cause SCALE = new Cause(Kind.OTHER, "scale drifted");

  private static Instant turn(int number) {
    return START.plus(Duration.ofHours(number));
  }

  private static Signal signal(String id, String mold, Direction direction, int since, int last) {
    Link link =
        new Link(
            WASH.name(),
            false,
            "wash",
            "ml",
            Evidence.STRONG,
            -30.0,
            -1.0,
            0.9,
            0.7,
            1.1,
            0.001,
            since,
            "",
            List.of());
    return new Signal(
        id,
        "N2",
        "thickness",
        mold.isEmpty() ? Scope.WHEEL : Scope.MOLD,
        mold.isEmpty() ? null : mold,
        null,
        since + 3,
        last,
        turn(since + 3),
        turn(last).plusSeconds(600),
        since,
        turn(since),
        false,
        List.of("sustained-shift"),
        direction,
        -1,
        -1.2,
        -0.8,
        -4,
        null,
        List.of(link));
  }

  private static Signal low(String id, String mold, int since, int last) {
    return signal(id, mold, Direction.LOW, since, last);
  }

  private static AuditReport report(int firstTurn, int lastTurn, Signal... signals) {
    return new AuditReport(
        new AuditReport.Log(
            List.of("june.csv"),
            1,
            1,
            0,
            turn(firstTurn),
            turn(lastTurn),
            List.of("N2"),
            26,
            lastTurn - firstTurn + 1),
        List.of(),
        List.of(signals),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(Remark.verbatim("a note of its own")),
        List.of(),
        List.of());
  }

  private static CauseMark mark(Signal signal, Cause cause, Verdict verdict) {
    return Causes.mark(signal, cause, verdict, "Ana", "looked", NOW);
  }

  @Test
  void aMarkIsFoundAgainInAnotherStretchWhereIdsAndTurnsAreOthers() {
    Signal then = low("S3", "14", 100, 120);
    CauseMark mark = mark(then, WASH, Verdict.RIGHT);
    // The same hours, audited from another day on: turns are counted anew, the onset is estimated
    // otherwise, and the signal lasted longer than was known then.
    Signal now =
        new Signal(
            "S1",
            "N2",
            "thickness",
            Scope.MOLD,
            "14",
            null,
            8,
            40,
            turn(105),
            turn(140),
            2,
            turn(99),
            true,
            List.of(),
            Direction.LOW,
            -1,
            null,
            null,
            -4,
            null,
            then.links());
    AuditReport joined = Causes.joined(report(97, 145, now), List.of(mark));
    assertThat(joined.causes().of(now, now.links().get(0))).isEqualTo(mark);
    assertThat(joined.causes().confirmed()).isEqualTo(1);
    assertThat(joined.causes().unmatched()).isEmpty();
    assertThat(joined.notes()).containsExactly(Remark.verbatim("a note of its own"));
  }

  @Test
  void aMarkIsAboutNoOtherPlaceDirectionOrTime() {
    CauseMark mark = mark(low("S1", "14", 100, 120), WASH, Verdict.RIGHT);
    Signal otherMold = low("S1", "15", 100, 120);
    Signal otherWay = signal("S2", "14", Direction.HIGH, 100, 120);
    Signal whole = low("S3", "", 100, 120);
    Signal before = low("S4", "14", 60, 99);
    Signal after = low("S5", "14", 121, 140);
    AuditReport joined =
        Causes.joined(report(0, 200, otherMold, otherWay, whole, before, after), List.of(mark));
    assertThat(joined.causes().marks()).isEmpty();
    assertThat(joined.causes().unmarked()).isEqualTo(5);
    assertThat(joined.causes().unmatched()).containsExactly(mark);
    assertThat(joined.notes())
        .hasSize(2)
        .last()
        .asString()
        .contains("fits no signal of this audit", "wash_volume_ml", "right by Ana", "mold 14");

    // In the same hour they meet.
    Signal touching = low("S1", "14", 120, 140);
    assertThat(Causes.joined(report(0, 200, touching), List.of(mark)).causes().marks()).hasSize(1);
    // Of another time or another wheel, nothing is said, and it is counted all the same.
    AuditReport later = Causes.joined(report(300, 400), List.of(mark));
    assertThat(later.causes().elsewhere()).isEqualTo(1);
    assertThat(later.causes().unmatched()).isEmpty();
    assertThat(later.notes()).hasSize(1);
  }

  @Test
  void theNewestOfACauseCountsAndOneThatIsTakenBackDoesNot() {
    Signal signal = low("S1", "14", 100, 120);
    Link link = signal.links().get(0);
    List<CauseMark> all = new ArrayList<>();
    all.add(mark(signal, WASH, Verdict.RIGHT));
    all.add(mark(signal, new Cause(Kind.OTHER, "Scale  drifted"), Verdict.RIGHT));
    all.add(mark(signal, WASH, Verdict.WRONG));
    CausesReport now = Causes.joined(report(0, 200, signal), all).causes();
    assertThat(now.of(signal, link)).isEqualTo(all.get(2));
    assertThat(now.besideLinks(signal)).containsExactly(all.get(1));

    all.add(mark(signal, WASH, Verdict.OPEN));
    all.add(mark(signal, SCALE, Verdict.WRONG)); // however the letters are, the same words
    now = Causes.joined(report(0, 200, signal), all).causes();
    assertThat(now.of(signal, link)).isNull();
    assertThat(now.of(signal)).containsExactly(all.get(4));
    assertThat(now.confirmed()).isZero();
    assertThat(now.refuted()).isEqualTo(1);

    all.add(mark(signal, SCALE, Verdict.OPEN));
    now = Causes.joined(report(0, 200, signal), all).causes();
    assertThat(now.marks()).isEmpty();
    assertThat(now.unmarked()).isEqualTo(1);
    // Nor is what was taken back missed where the signal is not found.
    assertThat(Causes.joined(report(0, 200), all).causes().isEmpty()).isTrue();
  }

  /**
   * Counted by hand. Right: wash for S1 (turns 10–19: 10), S2 (20–24: 5) and S3 (30–30: 1); pour
   * for S3 (1) and S4 (40–44: 5); scale for S5 (50–57: 8) and S4 (5). Seven in all: 3/7, 2/7, 2/7;
   * scale lasted longer than pour. Wash was wrong for S5, the mold change for S6 alone.
   */
  @Test
  void countsCausesLikeAHand() {
    Signal s1 = low("S1", "1", 10, 19);
    Signal s2 = low("S2", "2", 20, 24);
    Signal s3 = low("S3", "3", 30, 30);
    Signal s4 = low("S4", "4", 40, 44);
    Signal s5 = low("S5", "5", 50, 57);
    Signal s6 = low("S6", "6", 60, 61);
    Signal s7 = low("S7", "7", 70, 71);
    Cause change = new Cause(Kind.EVENT, "mold_changed");
    CausesReport causes =
        Causes.joined(
                report(0, 100, s1, s2, s3, s4, s5, s6, s7),
                List.of(
                    mark(s5, SCALE, Verdict.RIGHT),
                    mark(s3, POUR, Verdict.RIGHT),
                    mark(s4, POUR, Verdict.RIGHT),
                    mark(s1, WASH, Verdict.RIGHT),
                    mark(s2, WASH, Verdict.RIGHT),
                    mark(s3, WASH, Verdict.RIGHT),
                    mark(s4, SCALE, Verdict.RIGHT),
                    mark(s5, WASH, Verdict.WRONG),
                    mark(s6, change, Verdict.WRONG)))
            .causes();

    assertThat(causes.causes())
        .extracting(Counted::cause, Counted::right, Counted::wrong, Counted::turns)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(WASH, 3, 1, 16),
            org.assertj.core.groups.Tuple.tuple(SCALE, 2, 0, 13),
            org.assertj.core.groups.Tuple.tuple(POUR, 2, 0, 6),
            org.assertj.core.groups.Tuple.tuple(change, 0, 1, 0));
    double[] shares = {3 / 7.0, 2 / 7.0, 2 / 7.0, 0};
    double[] together = {3 / 7.0, 5 / 7.0, 1, 1};
    for (int i = 0; i < 4; i++) {
      assertThat(causes.causes().get(i).share()).isCloseTo(shares[i], within(1e-15));
      assertThat(causes.causes().get(i).cumulative()).isCloseTo(together[i], within(1e-15));
    }
    assertThat(causes.confirmed()).isEqualTo(5);
    assertThat(causes.refuted()).isEqualTo(1);
    assertThat(causes.unmarked()).isEqualTo(1);
  }

  @Test
  void joiningAgainTakesThePlaceOfWhatWasJoined() {
    Signal signal = low("S1", "14", 100, 120);
    CauseMark lost = mark(low("S9", "20", 10, 20), WASH, Verdict.RIGHT);
    AuditReport once = Causes.joined(report(0, 200, signal), List.of(lost));
    List<CauseMark> more = List.of(lost, mark(signal, WASH, Verdict.RIGHT));
    AuditReport twice = Causes.joined(once, more);
    assertThat(twice).isEqualTo(Causes.joined(report(0, 200, signal), more));
    assertThat(twice.notes()).hasSize(2);
    assertThat(Causes.joined(twice, List.of())).isEqualTo(report(0, 200, signal));
  }
}
