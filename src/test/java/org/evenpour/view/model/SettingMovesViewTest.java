package org.evenpour.view.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.BeyondSettings;
import org.evenpour.findings.BeyondSettings.Departure;
import org.evenpour.findings.BeyondSettings.View;
import org.evenpour.findings.SettingsWatched;
import org.evenpour.findings.SettingsWatched.Move;
import org.evenpour.live.RecordNow;
import org.evenpour.live.Snapshot;
import org.evenpour.picture.Mark;
import org.junit.jupiter.api.Test;

class SettingMovesViewTest {
  private static final String SPRAY = "Spray flow of molds 13 to 16 fell by 25 L/min at turn 182";

  private static Move move(String setting, String group, boolean open, List<String> signals) {
    return new Move(
        "T1",
        setting,
        "L/min",
        group,
        Scope.MOLD,
        List.of("13", "14", "15", "16"),
        null,
        Direction.LOW,
        184,
        200,
        182,
        Instant.parse("2026-03-06T22:10:00Z"),
        Instant.parse("2026-03-07T03:00:00Z"),
        open,
        -25,
        -24,
        -26,
        -8,
        signals,
        "");
  }

  private static AuditReport with(AuditReport report, Move... moves) {
    return report.withWatched(new SettingsWatched(List.of(), List.of(moves), BeyondSettings.NONE));
  }

  private static AuditReport beyond(AuditReport report, boolean open) {
    Departure one =
        new Departure(
            report.characteristics().get(0).wheel(),
            "mass",
            List.of("launder_level_mm"),
            Direction.HIGH,
            188,
            230,
            182,
            Instant.parse("2026-03-07T10:00:00Z"),
            Instant.parse("2026-03-08T10:00:00Z"),
            open,
            1.2,
            0.9,
            1.5,
            1.8,
            List.of(),
            true,
            null);
    View view = new View(one.wheel(), "mass", List.of(), 1, 200, 0.7, 0, 2, List.of(one));
    return report.withWatched(
        new SettingsWatched(List.of(), List.of(), new BeyondSettings(List.of(view))));
  }

  private static Desk desk(Move... moves) {
    return desk(with(Sample.opened().report(), moves));
  }

  private static Desk desk(AuditReport report) {
    OpenedLog opened = Sample.opened();
    Selection selection = new Selection();
    opened.fit(selection);
    return new Desk(
        new OpenedLog(
            opened.record(),
            report,
            opened.plant(),
            opened.wheels(),
            opened.ranked(),
            opened.part()),
        selection,
        Look.of(false, Language.of("en"), DisplayUnits.METRIC, 720));
  }

  @Test
  void theDeskShowsThoseThatHoldFirstAndNoneThatASignalTells() {
    Desk desk =
        desk(
            move("launder_l_min", "", false, List.of()),
            move("spray_flow_l_min", "cooling", true, List.of()),
            move("wash_l_min", "wash", true, List.of("S1")));
    List<SettingMovesView.Row> rows = SettingMovesView.of(desk, "", false).rows();
    assertThat(rows).hasSize(2);
    assertThat(rows.get(0).sentence()).startsWith(SPRAY);
    assertThat(rows.get(0).advice()).startsWith("Check first that the mold is dry.");
    assertThat(rows.get(0).mark()).isEqualTo(Mark.LOW);
    assertThat(rows.get(0).isOpen()).isTrue();
    assertThat(rows.get(1).isOpen()).isFalse();
    assertThat(SettingMovesView.of(desk, "", true).rows()).hasSize(1);
    assertThat(SettingMovesView.of(desk, "LAUNDER", false).rows()).hasSize(1);
  }

  @Test
  void theBoardSaysThemAfterEverySignal() {
    Snapshot s = BoardSample.at(BoardSample.UNEVEN).snapshot();
    Snapshot moved =
        with(
            s,
            with(
                Objects.requireNonNull(s.report()),
                move("spray_flow_l_min", "cooling", true, List.of()),
                move("launder_l_min", "", false, List.of())));
    BoardModel model =
        BoardReading.of(
            moved,
            Objects.requireNonNull(s.arrivedAt()),
            BoardSample.look("en", false),
            BoardChoice.NONE);
    assertThat(model.moves()).hasSize(1);
    assertThat(model.moves().get(0).lead()).startsWith(SPRAY);
    assertThat(model.moves().get(0).advice()).startsWith("Check first that the mold is dry.");
    assertThat(model.signals()).noneMatch(matter -> matter.lead().startsWith(SPRAY));
    assertThat(model.spoken().indexOf(SPRAY))
        .isGreaterThan(model.spoken().indexOf(model.signals().get(0).lead()));
  }

  private static Snapshot with(Snapshot s, AuditReport report) {
    RecordNow its = s.record();
    return OtherSnapshot.than(s)
        .record(its == null ? null : new RecordNow(its.record(), report, its.plant()))
        .snapshot();
  }

  @Test
  void deskAndBoardSayWhatStandsOffBeyondTheSettings() {
    List<SettingMovesView.Row> rows =
        SettingMovesView.of(desk(beyond(Sample.opened().report(), true)), "", false).rows();
    assertThat(rows).hasSize(1);
    assertThat(rows.get(0).mark()).isEqualTo(Mark.HIGH);
    assertThat(rows.get(0).sentence())
        .startsWith("The whole wheel runs heavy since turn 182")
        .endsWith("beyond what launder level explains.");
    assertThat(SettingMovesView.of(desk(beyond(Sample.opened().report(), false)), "", true).rows())
        .isEmpty();

    Snapshot s = BoardSample.at(BoardSample.UNEVEN).snapshot();
    BoardModel board =
        BoardReading.of(
            with(s, beyond(Objects.requireNonNull(s.report()), true)),
            Objects.requireNonNull(s.arrivedAt()),
            BoardSample.look("en", false),
            BoardChoice.NONE);
    assertThat(board.moves().get(0).lead())
        .isEqualTo("The whole wheel runs heavy since turn 182: +1.2 kg");
    assertThat(board.moves().get(0).advice()).isEqualTo("Beyond what launder level explains.");
    assertThat(board.verdict().isEven()).isFalse();
    assertThat(board.verdict().parts())
        .anyMatch(part -> part.text().equals("The whole wheel: heavy"));
  }
}
