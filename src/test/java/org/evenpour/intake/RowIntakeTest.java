package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.column.IntColumn;
import org.evenpour.column.Labels;
import org.evenpour.column.Pages;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A log that still grows, row by row. */
class RowIntakeTest {

  private static RowIntake open(String headings) throws IntakeException {
    RowIntake intake = new RowIntake(Profiles.NONE, new Pages(Long.MAX_VALUE), null, null);
    intake.open(LogHeader.read("live.csv", 1, headings, Profiles.NONE));
    return intake;
  }

  @Test
  void saysWhatBecameOfEachRow() throws IntakeException {
    RowIntake intake = open("cast_at,wheel,mold,ladle,mass_kg,thickness_mm");
    assertThat(intake.accept(2, List.of("2026-03-04T05:00:00Z", "E", "7", "A", "388", "")))
        .isEqualTo(RowIntake.Outcome.KEPT);
    assertThat(intake.anode().values()).containsExactly(388, Double.NaN);
    assertThat(intake.anode().mold()).isZero();
    assertThat(intake.anode().side()).isZero();
    assertThat(intake.anode().serial()).isEqualTo(-1);
    assertThat(
            intake.accept(
                3, "2026-03-04T05:00:30Z,E,8,,389,43\r\n".getBytes(StandardCharsets.UTF_8)))
        .isEqualTo(RowIntake.Outcome.KEPT);
    assertThat(intake.anode().values()).containsExactly(389, 43);
    assertThat(intake.anode().side()).isEqualTo(-1);
    assertThat(intake.accept(4, List.of("", "", "", "", "", "")))
        .isEqualTo(RowIntake.Outcome.BLANK);
    assertThat(intake.accept(5, List.of("now", "E", "9", "A", "388", "")))
        .isEqualTo(RowIntake.Outcome.SET_ASIDE);
    assertThat(intake.setAside().line()).isEqualTo(5);
    assertThat(intake.setAside().text()).isEqualTo("now,E,9,A,388,");
    assertThat(intake.accept(6, List.of("2026-03-04T05:00:30Z", "E", "9, or so", "A", "388", "43")))
        .isEqualTo(RowIntake.Outcome.KEPT);
    assertThat(intake.record().molds().names()).containsExactly("7", "8", "9, or so");
    assertThat(intake.rowsRead()).isEqualTo(4);
    assertThat(intake.rowsSetAside()).isEqualTo(1);
  }

  @Test
  void takesOneRowAtATime() throws IntakeException {
    RowIntake intake = open("cast_at,mold,mass_kg");
    assertThatThrownBy(() -> intake.accept(2, "a,b,c\nd,e,f".getBytes(StandardCharsets.UTF_8)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void showsSettingsBeforeItIsDecidedWhatTheyHold() throws IntakeException {
    RowIntake intake = open("cast_at,mold,mass_kg,flow");
    for (int row = 0; row < 1500; row++) {
      intake.accept(
          row + 2, List.of("2026-03-04T05:00:00Z", "" + row % 26, "388", row == 0 ? "off" : "5"));
      if (row == 0) {
        assertThat(intake.record().settings().get(0).labels().names()).containsExactly("off");
      } else if (row % 100 == 50) {
        DoubleColumn flow = Objects.requireNonNull(intake.record().settings().get(0).numbers());
        assertThat(flow.size()).isEqualTo(row + 1);
        assertThat(flow.get(0)).isNaN();
        assertThat(flow.get(row)).isEqualTo(5);
      }
    }
  }

  /** The logs of a wheel that was run with everything in it, whole and row by row. */
  @Test
  void makesTheSameRecordAsReadingTheWholeLog(@TempDir Path folder) throws IntakeException {
    List<String> lines = new ArrayList<>();
    lines.add(
        "cast_at,wheel,mold,ladle,crew,mass_kg,target_mass_kg,thickness_a_mm,thickness_b_mm,flow,hue,defect");
    for (int row = 0; row < 3000; row++) {
      lines.add(
          String.join(
              ",",
              "2026-03-04T05:" + (10 + row / 60 % 50) + ":" + (10 + row % 50) + "Z",
              row % 5 == 0 ? "E" : "W",
              "" + row % 26,
              row % 7 == 0 ? "" : row % 2 == 0 ? "A" : "B",
              "crew " + row / 1000,
              row % 11 == 0 ? "" : row % 97 == 0 ? "bad" : "38" + row % 10,
              row < 1500 ? "388" : "387",
              "43",
              row % 13 == 0 ? "" : "44",
              row % 30 == 0 ? "off" : "5." + row,
              row % 17 == 0 ? "" : "hue " + row % 3,
              row % 100 == 0 ? "fins" : ""));
    }
    Path log = LogText.write(folder, "live.csv", String.join("\n", lines));
    CastingRecord whole = LogText.read("", log);
    RowIntake intake = open(lines.get(0));
    for (int i = 1; i < lines.size(); i++) {
      intake.accept(i + 1, lines.get(i).getBytes(StandardCharsets.UTF_8));
    }
    assertThat(intake.rowsRead()).isEqualTo(whole.rowsRead());
    assertThat(intake.rowsSetAside()).isEqualTo(whole.rowsSetAside()).isPositive();
    assertThat(intake.warnings()).isEqualTo(whole.warnings());
    assertThat(intake.records().stream().map(RowIntakeTest::flat).toList())
        .isEqualTo(whole.wheels().stream().map(RowIntakeTest::flat).toList());
    assertThat(whole.wheels()).hasSize(2);
  }

  /** All that a record holds, as lists that can be compared. */
  private static List<Object> flat(WheelRecord wheel) {
    List<Object> all = new ArrayList<>();
    all.add(wheel.wheel());
    all.add(wheel.molds().names());
    all.add(wheel.sides().names());
    all.add(Arrays.toString(wheel.castAtMillis().toArray()));
    all.add(Arrays.toString(wheel.turn().toArray()));
    all.add(Arrays.toString(wheel.mold().toArray()));
    all.add(Arrays.toString(wheel.side().toArray()));
    all.add(Arrays.toString(wheel.serial().toArray()));
    all.add(Arrays.toString(wheel.line().toArray()));
    wheel.characteristics().forEach(one -> add(all, one.name(), one.values(), null, null));
    wheel.points().forEach(one -> add(all, one.point(), one.values(), null, null));
    List<@Nullable Setting> settings = new ArrayList<>(wheel.settings());
    settings.add(wheel.disposition());
    settings.add(wheel.defect());
    for (Setting one : settings) {
      if (one != null) {
        add(all, one.name(), one.numbers(), one.categories(), one.labels());
      }
    }
    return all;
  }

  private static void add(
      List<Object> all,
      String name,
      @Nullable DoubleColumn numbers,
      @Nullable IntColumn categories,
      @Nullable Labels labels) {
    all.add(name);
    all.add(numbers == null ? "" : Arrays.toString(numbers.toArray()));
    all.add(categories == null ? "" : Arrays.toString(categories.toArray()));
    all.add(labels == null ? "" : labels.names());
  }
}
