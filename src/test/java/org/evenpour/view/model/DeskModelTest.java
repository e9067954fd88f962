package org.evenpour.view.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CancellationException;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.MoldReport;
import org.evenpour.intake.Progress;
import org.evenpour.picture.MoldRing;
import org.evenpour.report.Figures;
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
          .isEqualTo(Figures.number(its.mean(), 2));
    }
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
    var wide = Charts.wheel(metric, report(metric), true);
    var narrow = Charts.wheel(inches, report(inches), true);
    assertThat(narrow.points().y()[10] * 25.4)
        .isCloseTo(wide.points().y()[10], org.assertj.core.data.Offset.offset(1e-9));
    assertThat(narrow.up().title()).isEqualTo("Thickness, in");
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
    assertThat(Charts.wheel(desk, report(desk), true).across().low()).isEqualTo(100);
    RecordRows rows = RecordRows.of(desk);
    assertThat(rows.cell(0, 1).text()).isEqualTo("100");
    assertThat(rows.cell(rows.size() - 1, 1).text()).isEqualTo("119");
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
    assertThat(csv.toString()).startsWith("Cast at,Turn,Mold");
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
      var stack = EvidenceView.stack(desk, signal, report, EvidenceView.bestSetting(desk, signal));
      assertThat(stack.rows()).isNotEmpty();
      var lowest = stack.rows().get(stack.rows().size() - 1);
      assertThat(lowest.points().size()).isPositive();
      assertThat(lowest.flags()).anyMatch(flag -> flag.name().equals(signal.id()));
    }
  }

  @Test
  void filesFindTheirPlaceByWhatTheyAre(@TempDir Path folder) throws IOException {
    Path log = Files.writeString(folder.resolve("a.csv"), "cast_at,mold,mass_kg\n");
    Path events = Files.writeString(folder.resolve("b.csv"), "at,wheel,mold,event,note\n");
    Path profile = Files.writeString(folder.resolve("c.yaml"), "wheel: N2\n");
    Sources sources = Sources.NONE.with(List.of(events, profile, log));
    assertThat(sources).isEqualTo(new Sources(List.of(log), profile, events));
    Path other = Files.writeString(folder.resolve("d.csv"), "cast_at,mold,mass_kg\n");
    assertThat(sources.with(List.of(other)))
        .isEqualTo(new Sources(List.of(other), profile, events));
  }

  @Test
  void readingCanBeStopped() {
    assertThatThrownBy(() -> Sample.SOURCES.open(Progress.NONE, () -> true))
        .isInstanceOf(CancellationException.class);
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
