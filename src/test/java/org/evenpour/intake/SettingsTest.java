package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.evenpour.intake.LogText.setting;
import static org.evenpour.intake.LogText.wheel;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.IntFunction;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Setting;
import org.evenpour.words.Remark;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which columns become numbers and which categories. */
class SettingsTest {

  @TempDir Path folder;

  private CastingRecord read(int rows, String heading, IntFunction<String> cell)
      throws IntakeException {
    List<String> lines = new ArrayList<>(List.of("cast_at,mold,mass_kg," + heading));
    for (int row = 0; row < rows; row++) {
      lines.add("2026-03-04T05:00:00Z," + row % 26 + ",388," + cell.apply(row));
    }
    return LogText.read(folder, "", lines.toArray(String[]::new));
  }

  @Test
  void takesAColumnForNumbersThoughATenthOfItsFirstThousandIsNone() throws IntakeException {
    CastingRecord record = read(1500, "flow", row -> row % 10 == 3 ? "off" : "5" + row);
    double[] values = Objects.requireNonNull(setting(wheel(record), "flow").numbers()).toArray();
    assertThat(values).hasSize(1500);
    assertThat(values[4]).isEqualTo(54);
    assertThat(values[3]).isNaN();
    assertThat(values[1499]).isEqualTo(51499);
    assertThat(record.warnings())
        .extracting(Remark::toString)
        .containsExactly(
            "\"flow\": 150 cells are no number and counted as missing, the first \"off\" in line 5");
  }

  @Test
  void takesAColumnForCategoriesIfMoreThanATenthIsNoNumber() throws IntakeException {
    Setting flow = setting(wheel(read(1500, "flow", row -> row % 9 == 3 ? "off" : "5")), "flow");
    assertThat(flow.labels().names()).containsExactly("5", "off");
    assertThat(Objects.requireNonNull(flow.categories()).size()).isEqualTo(1500);
  }

  @Test
  void decidesByWrittenCellsOnlyAndOnlyByTheFirstThousand() throws IntakeException {
    CastingRecord record =
        read(3000, "flow", row -> row % 2 == 0 ? "" : row < 2000 ? "1.5" : "high");
    double[] values = Objects.requireNonNull(setting(wheel(record), "flow").numbers()).toArray();
    assertThat(values).hasSize(3000);
    assertThat(values[0]).isNaN();
    assertThat(values[1]).isEqualTo(1.5);
    assertThat(values[2999]).isNaN();
    assertThat(record.warnings())
        .extracting(Remark::toString)
        .containsExactly(
            "\"flow\": 500 cells are no number and counted as missing, the first \"high\" in line"
                + " 2003");
  }

  @Test
  void takesFewCellsAsTheyAre() throws IntakeException {
    assertThat(setting(wheel(read(3, "flow", row -> "7" + row)), "flow").numbers()).isNotNull();
    assertThat(setting(wheel(read(3, "flow", row -> row == 2 ? "x" : "7")), "flow").categories())
        .isNotNull();
  }

  @Test
  void countsWhatIsNoFiniteNumberAsMissing() throws IntakeException {
    List<String> cells = List.of("NaN", "Infinity", "1e400");
    CastingRecord record = read(60, "flow", row -> row < 3 ? cells.get(row) : "5");
    double[] values = Objects.requireNonNull(setting(wheel(record), "flow").numbers()).toArray();
    assertThat(values).startsWith(Double.NaN, Double.NaN, Double.NaN, 5);
    assertThat(record.warnings()).singleElement().asString().contains("3 cells are no number");
  }

  @Test
  void leavesOutTextThatIsAlwaysDifferent() throws IntakeException {
    CastingRecord record = read(1001, "remark", row -> "remark " + row);
    assertThat(wheel(record).settings()).isEmpty();
    assertThat(record.warnings())
        .extracting(Remark::toString)
        .containsExactly(
            "the setting \"remark\" is left out: it has more than 1000 different values and is no"
                + " number");
    assertThat(
            setting(wheel(read(1000, "remark", row -> "remark " + row)), "remark").labels().size())
        .isEqualTo(1000);
  }

  @Test
  void keepsAnyNumberOfChargesAndNeverTakesThemForNumbers() throws IntakeException {
    Setting charge = setting(wheel(read(2000, "charge", row -> "" + row)), "charge");
    assertThat(charge.labels().size()).isEqualTo(2000);
    assertThat(charge.numbers()).isNull();
  }

  @Test
  void leavesOutAColumnInWhichNothingIsWritten() throws IntakeException {
    assertThat(wheel(read(3, "flow", row -> "")).settings()).isEmpty();
  }

  @Test
  void ignoresColumnsWithoutAHeading() throws IntakeException {
    assertThat(wheel(read(3, "", row -> "5")).settings()).isEmpty();
  }

  @Test
  void saysWhichSettingsOfTheProfileNoLogHas() throws IntakeException {
    CastingRecord record =
        LogText.read(
            folder,
            "settings: {wash_volum_ml: {group: wash}, Flow: {group: cooling}}",
            "cast_at,mold,mass_kg,flow,wash_volume_ml",
            "2026-03-04T05:00:00Z,1,388,5,900");
    assertThat(record.warnings())
        .extracting(Remark::toString)
        .containsExactly(
            "the profile speaks of the setting \"wash_volum_ml\", which is no column of the log");
    assertThat(setting(wheel(record), "Flow").profile().group()).isEqualTo("cooling");
  }

  @Test
  void saysWhenAWheelsProfileAppliesToNoRow() throws IntakeException {
    String[] log = {"cast_at,mold,mass_kg", "2026-03-04T05:00:00Z,1,388"};
    assertThat(LogText.read(folder, "wheel: N2", log).warnings())
        .extracting(Remark::toString)
        .containsExactly(
            "the profile of wheel \"N2\" applies to no row: the log names no wheel; leave wheel out"
                + " of the profile");
  }
}
