package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Direction;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.BeyondSettings;
import org.evenpour.findings.BeyondSettings.Departure;
import org.evenpour.findings.BeyondSettings.View;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A wheel whose launder level wanders by 2.4 kg of mass, beside 0.6 kg that turns do themselves.
 */
class BeyondWatchTest {
  private static final WanderingWheel WHEEL = new WanderingWheel(2.4, 0.7, 0.6, 0.35, false);
  private static final int TURNS = 300;

  @TempDir private Path folder;

  private CastingRecord record(int turns, WanderingWheel.Fault fault, double share)
      throws Exception {
    return WanderingWheel.read(
        folder,
        WanderingWheel.first(WHEEL.log(20261130, TURNS, fault), turns, TURNS),
        WanderingWheel.profile(share));
  }

  private static WanderingWheel.Fault step(int from, int to) {
    return turn -> turn >= from && turn < to ? 1.5 : 0;
  }

  @Test
  void seesAFaultBehindTheWander() throws Exception {
    AuditReport report = Audit.run(record(TURNS, step(200, TURNS), 0.1));
    View view = report.watched().beyond().views().get(0);
    assertThat(view.settings()).hasSize(1);
    assertThat(view.settings().get(0).setting()).isEqualTo("launder_mm");
    assertThat(view.settings().get(0).perUnit())
        .isCloseTo(WanderingWheel.EFFECT, within(3 * view.settings().get(0).error()));
    // Pours of 2 kg leave 2/√26 of a turn's mean; with its own 0.6 that is 0.72.
    assertThat(view.sigma()).isCloseTo(Math.hypot(0.6, 2 / Math.sqrt(26)), within(0.1));
    assertThat(report.signals()).noneMatch(BeyondTold::isOfWheel);
    assertThat(report.watched().beyond().alone())
        .singleElement()
        .satisfies(
            one -> {
              assertThat(one.direction()).isEqualTo(Direction.HIGH);
              assertThat(one.open()).isTrue();
              // turn numbers count from 1
              assertThat(one.sinceTurn()).isBetween(196, 206);
              assertThat(one.firstTurn()).isBetween(201, 212);
              assertThat(one.sizeLow()).isLessThan(1.5);
              assertThat(one.sizeHigh()).isGreaterThan(1.5);
            });
  }

  @Test
  void whatIsSoundStaysQuietAndWithoutAShareThereIsNoView() throws Exception {
    BeyondSettings sound = Audit.run(record(TURNS, step(0, 0), 0.1)).watched().beyond();
    assertThat(sound.views()).hasSize(1);
    assertThat(sound.alone()).isEmpty();
    assertThat(Audit.run(record(TURNS, step(200, TURNS), 0)).watched().beyond().views()).isEmpty();
  }

  @Test
  void aRecordThatGrowsIsJudgedByTheEffectsOfItsAudit() throws Exception {
    Audited audited = Audit.inFull(record(200, step(200, TURNS), 0.1), PlantRecords.NONE);
    assertThat(audited.report().watched().beyond().alone()).isEmpty();
    CastingRecord grown = record(TURNS, step(200, TURNS), 0.1);
    BeyondSettings beyond =
        Audit.again(grown, PlantRecords.NONE, audited).report().watched().beyond();
    View before = audited.report().watched().beyond().views().get(0);
    assertThat(beyond.views().get(0).with(List.of())).isEqualTo(before.with(List.of()));
    assertThat(beyond.alone()).extracting(Departure::open).containsExactly(true);
    assertThat(beyond.alone().get(0).firstTurn()).isBetween(201, 212);
  }

  @Test
  void theSameRecordIsJudgedTheSameWayAgain() throws Exception {
    CastingRecord record = record(TURNS, step(200, 260), 0.1);
    Audited audited = Audit.inFull(record, PlantRecords.NONE);
    assertThat(Audit.again(record, PlantRecords.NONE, audited)).isEqualTo(audited);
  }
}
