package org.evenpour.view.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CancellationException;
import org.evenpour.audit.Causes;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.casting.CauseMark.Verdict;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.live.LogsAtRest;
import org.evenpour.picture.CauseBars;
import org.evenpour.picture.MoldRing;
import org.evenpour.plant.PlantFiles;
import org.evenpour.table.Column;
import org.evenpour.words.Digits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DeskModelTest {
  private static CharacteristicReport report(Desk desk) {
    return Objects.requireNonNull(desk.characteristic());
  }

  @Test
  void tablesShowTheReportsOwnNumbers() {
    Desk desk = Sample.desk();
    CharacteristicReport report = report(desk);
    var columns = Tables.moldColumns(desk, report);
    int mean = columns.stream().map(Column::key).toList().indexOf("mean");
    for (Tables.MoldRow row : Tables.molds(desk, report)) {
      MoldReport its = Objects.requireNonNull(OpenedLog.mold(report, row.mold()));
      assertThat(columns.get(mean).cell().apply(row).text())
          .isEqualTo(Digits.number(its.mean(), 2));
    }
  }

  /** A log of three molds a turn: capability is there, and nothing is said of signals. */
  @Test
  void saysWhereNoSignalsWereLookedFor(@TempDir Path folder) throws Exception {
    StringBuilder log = new StringBuilder("cast_at,turn,mold,mass_kg\n");
    for (int row = 0; row < 30; row++) {
      Instant at = Instant.parse("2026-03-02T10:00:00Z").plusSeconds(60L * row);
      log.append(at + "," + row / 3 + "," + row % 3 + "," + (388 + row * 7 % 5) + "\n");
    }
    Path file = Files.writeString(folder.resolve("log.csv"), log);
    OpenedLog opened = Sample.read(new PlantFiles(List.of(file), null, null));
    Selection selection = new Selection();
    opened.fit(selection);
    Look look = Look.of(false, Language.of("es"), DisplayUnits.METRIC, 720);
    Desk desk = new Desk(opened, selection, look);
    var stable =
        Tables.capabilityColumns(desk, "mold").stream()
            .filter(column -> column.key().equals("stable"))
            .findFirst()
            .orElseThrow();
    assertThat(Tables.capability(desk)).isNotEmpty();
    for (Tables.CapabilityRow row : Tables.capability(desk)) {
      assertThat(stable.cell().apply(row).text()).isEqualTo("no se buscó");
    }
    assertThat(desk.quiet().lines(desk.sentences().words()))
        .containsExactly(
            "No se buscaron señales de masa: 3 moldes por vuelta, y hacen falta cuatro para separar"
                + " moldes y vueltas; por sí solo un molde necesita 12 ánodos.");
  }

  @Test
  void moldsWithASignalComeFirst() {
    Desk desk = Sample.desk();
    List<Tables.MoldRow> rows = Tables.molds(desk, report(desk));
    assertThat(rows).hasSize(26);
    long withSignal = rows.stream().filter(row -> row.signal() != null).count();
    assertThat(withSignal).isPositive();
    assertThat(rows.subList(0, (int) withSignal))
        .allSatisfy(row -> assertThat(row.signal()).isNotNull());
  }

  @Test
  void poundsAndInchesAreTheSameValuesInOtherUnits() {
    // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
    Desk metric = Sample.desk();
    Desk inches = Sample.desk(Look.of(false, Language.of("en"), DisplayUnits.POUND_INCH, 720));
    var wide = Charts.wheel(metric, report(metric));
    var narrow = Charts.wheel(inches, report(inches));
    assertThat(narrow.points().y()[10] * 25.4)
        .isCloseTo(wide.points().y()[10], org.assertj.core.data.Offset.offset(1e-9));
    assertThat(narrow.up().title()).isEqualTo("Thickness, in");
  }

  /** Against the sample's own lines: mold 7 first in turn 1, (45.5+45.4+45.4+45.6+45.2)/5 mm. */
  @Test
  void aValueTellsItsTimeItsTurnAndItsMold() {
    Desk desk = Sample.desk();
    assertThat(Charts.mold(desk, report(desk), "7").points().says().apply(0))
        .isEqualTo("Mon 2 Mar 06:11, turn 1, mold 7: 45.5 mm");
    desk.selection().chooseMold("7");
    var rows = EvidenceView.settingOver(desk, "pour_rate_kg_s", report(desk)).rows();
    assertThat(rows.get(0).points().says().apply(1))
        .isEqualTo("Mon 2 Mar 06:24, turn 2, mold 7: 14.96 kg/s");
    assertThat(Charts.wheel(desk, report(desk)).points().says().apply(0))
        .startsWith("Mon 2 Mar 06:")
        .contains(", turn 1: ")
        .endsWith(" mm");
  }

  @Test
  void aStretchGovernsSignalsRowsAndPictures() {
    Desk desk = Sample.desk();
    int all = RecordRows.of(desk).size();
    int signals = desk.signals().size();
    desk.selection().chooseStretch(new Stretch(100, 120));
    assertThat(RecordRows.of(desk).size()).isPositive().isLessThan(all / 10);
    assertThat(desk.signals()).isNotEmpty();
    assertThat(desk.signals().size()).isLessThan(signals);
    assertThat(Charts.wheel(desk, report(desk)).across().low()).isEqualTo(100);
    RecordRows rows = RecordRows.of(desk);
    assertThat(rows.cell(0, 0).text()).isEqualTo("100");
    assertThat(rows.cell(rows.size() - 1, 0).text()).isEqualTo("119");
  }

  @Test
  void aMoldGovernsTheRows() {
    Desk desk = Sample.desk();
    desk.selection().chooseMold("17");
    RecordRows rows = RecordRows.of(desk);
    assertThat(rows.size()).isEqualTo(desk.wheel().rows("17").length);
    assertThat(rows.cell(5, 2).text()).isEqualTo("17");
  }

  @Test
  void rowsAreWrittenAsTheyAreShown() throws IOException {
    Desk desk = Sample.desk();
    desk.selection().chooseStretch(new Stretch(10, 11));
    StringBuilder csv = new StringBuilder();
    RecordRows.of(desk).writeCsv(csv);
    assertThat(csv.toString().lines()).hasSize(RecordRows.of(desk).size() + 1);
    assertThat(csv.toString()).startsWith("Turn,Cast at,Mold");
  }

  @Test
  void theRingMarksTheMoldsThatCarryASignal() {
    Desk desk = Sample.desk();
    CharacteristicReport report = report(desk);
    MoldRing ring = WheelView.ring(desk, report);
    assertThat(ring.molds()).hasSize(26);
    for (MoldRing.Mold mold : ring.molds()) {
      var signal = WheelView.signalOf(desk, report, mold.label());
      assertThat(mold.word().isEmpty()).isEqualTo(signal == null);
      assertThat(mold.says()).contains(mold.label());
    }
  }

  @Test
  void theSpreadsPartsMakeAWhole() {
    Desk desk = Sample.desk();
    var bar = Objects.requireNonNull(WheelView.spread(desk, report(desk)));
    assertThat(bar.parts().stream().mapToDouble(part -> part.share()).sum())
        .isCloseTo(1, org.assertj.core.data.Offset.offset(1e-12));
  }

  @Test
  void everySignalHasItsPicture() {
    Desk desk = Sample.desk();
    for (var signal : desk.report().signals()) {
      desk.selection().chooseSignal(signal);
      CharacteristicReport report = report(desk);
      var stack =
          EvidenceView.stack(desk, signal, report, EvidenceView.bestSetting(desk, signal), null);
      assertThat(stack.rows()).isNotEmpty();
      var lowest = stack.rows().get(stack.rows().size() - 1);
      assertThat(lowest.points().size()).isPositive();
      assertThat(lowest.flags()).anyMatch(flag -> flag.name().equals(signal.id()));
    }
  }

  /** The signal of mold 1, for which too much spray was planted. */
  private static Signal oversprayed(Desk desk) {
    return desk.report().signals().stream()
        .filter(one -> "1".equals(one.mold()) && one.characteristic().equals("thickness"))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void bothSeriesShowWhenTheSignalBeganAndWhenTheSettingDid() {
    Desk desk = Sample.desk();
    Signal signal = oversprayed(desk);
    desk.selection().chooseSignal(signal);
    Link link = signal.links().get(0);
    var stack = EvidenceView.stack(desk, signal, report(desk), link.name(), link);
    assertThat(stack.rows()).hasSize(2);
    for (var row : stack.rows()) {
      assertThat(row.flags())
          .anyMatch(flag -> flag.label().endsWith("since " + signal.sinceTurn()));
      assertThat(row.changes())
          .anyMatch(change -> change.label().equals("moved, " + link.sinceTurn()));
    }
  }

  @Test
  void aMarkStandsBesideItsLinkAndInItsReasoning() {
    Desk plain = Sample.desk();
    Signal signal = oversprayed(plain);
    Link link = signal.links().get(0);
    String before = LinkRow.of(plain, signal).get(0).reasoning(plain, signal);
    assertThat(before)
        .startsWith("Check first that the mold is dry. Spray flow rose with it by ")
        .contains("of moves as clear as this, ", "It began to move in turn ", "would explain ")
        .doesNotContain("Marked");
    Instant at = Instant.parse("2026-03-09T12:00:00Z");
    List<CauseMark> marks =
        List.of(
            Causes.mark(signal, link.cause(), Verdict.RIGHT, "Ana", "pump", at),
            Causes.mark(
                signal, new Cause(Kind.OTHER, "scale drifted"), Verdict.WRONG, "Eva", "no", at));
    OpenedLog marked = Sample.opened().marked(marks);
    Desk desk = new Desk(marked, plain.selection(), plain.look());
    List<LinkRow> rows = LinkRow.of(desk, signal);
    assertThat(rows).hasSize(signal.links().size() + 1);
    assertThat(rows.get(0).name(desk)).isEqualTo("Scale drifted");
    assertThat(rows.get(0).reasoning(desk, signal)).startsWith("Marked wrong by Eva on ");
    assertThat(rows.get(1).reasoning(desk, signal))
        .isEqualTo(before + " Marked right by Ana on 9 Mar 2026 09:00: pump");
    assertThat(EvidenceView.best(desk, signal)).isEqualTo(rows.get(1).key());
    assertThat(CausesView.bars(desk).bars())
        .extracting(CauseBars.Bar::name, CauseBars.Bar::right, CauseBars.Bar::wrong)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("Spray flow", 1, 0),
            org.assertj.core.groups.Tuple.tuple("Scale drifted", 0, 1));
    assertThat(CausesView.overview(desk)).contains("confirmed cause: 1 of ", "Not marked: ");
    assertThat(CausesView.overview(plain)).isEqualTo("No cause has been marked yet.");
  }

  @Test
  void everyLinkOfTheSampleHasItsReasons() {
    for (String language : Language.TAGS) {
      Desk desk = Sample.desk(Look.of(false, Language.of(language), DisplayUnits.METRIC, 720));
      for (Signal signal : desk.report().signals()) {
        for (LinkRow row : LinkRow.of(desk, signal)) {
          assertThat(row.reasoning(desk, signal)).endsWith(".").doesNotContain("{", "NaN", "null");
        }
      }
    }
  }

  @Test
  void filesFindTheirPlaceByWhatTheyAre(@TempDir Path folder) throws IOException {
    Path log = Files.writeString(folder.resolve("a.csv"), "cast_at,mold,mass_kg\n");
    Path events = Files.writeString(folder.resolve("b.csv"), "at,wheel,mold,event,note\n");
    Path profile = Files.writeString(folder.resolve("c.yaml"), "wheel: N2\n");
    PlantFiles sources = PlantFiles.NONE.with(List.of(events, profile, log));
    assertThat(sources).isEqualTo(new PlantFiles(List.of(log), profile, events));
    Path other = Files.writeString(folder.resolve("d.csv"), "cast_at,mold,mass_kg\n");
    assertThat(sources.with(List.of(other)))
        .isEqualTo(new PlantFiles(List.of(other), profile, events));
  }

  @Test
  void readingCanBeStopped() {
    LogsAtRest logs = new LogsAtRest(Sample.SOURCES);
    logs.close();
    assertThatThrownBy(logs::read).isInstanceOf(CancellationException.class);
  }

  @Test
  void textFollowsTheWindow() {
    assertThat(Look.textPx(720)).isEqualTo(13);
    assertThat(Look.textPx(1080)).isEqualTo(14);
    assertThat(Look.textPx(2160)).isEqualTo(28);
  }

  @Test
  void aRecordWhoseTurnsStartAnewIsNumberedThrough() {
    double[] at = Sample.opened().wheels().get(0).at();
    for (int i = 1; i < at.length; i++) {
      assertThat(at[i]).isGreaterThan(at[i - 1]);
    }
  }
}
