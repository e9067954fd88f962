package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.evenpour.intake.LogText.reasons;
import static org.evenpour.intake.LogText.values;
import static org.evenpour.intake.LogText.wheel;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.SetAsideRow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which rows are set aside, and what is said of them. */
class SetAsideReasonsTest {
  private static final String NO_PROFILE = "";

  @TempDir Path folder;

  /** Reads a row after a good one and returns why it was set aside. */
  private String reason(String profile, String headings, String good, String row)
      throws IntakeException {
    CastingRecord record = LogText.read(folder, profile, headings, good, row);
    assertThat(record.rowsRead()).isEqualTo(2);
    assertThat(record.rowsKept()).isEqualTo(1);
    assertThat(record.setAside()).hasSize(1);
    SetAsideRow aside = record.setAside().get(0);
    assertThat(aside.log()).isEqualTo("june.csv");
    assertThat(aside.line()).isEqualTo(3);
    assertThat(aside.text()).isEqualTo(row);
    return aside.reason().toString();
  }

  private String reason(String row) throws IntakeException {
    return reason(
        NO_PROFILE, "cast_at,mold,mass_kg,thickness_mm", "2026-03-04T05:00:00Z,1,388,43", row);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        ",2,388,43|cast_at is missing",
        "yesterday,2,388,43|cast_at \"yesterday\" is no time; write it like 2026-03-04T05:06:07+01:00",
        "2026-03-04T05:01:00Z,,388,43|mold is missing",
        "2026-03-04T05:01:00Z,2,,|mass_kg and thickness_mm are missing",
        "2026-03-04T05:01:00Z,2,abc,43|mass_kg \"abc\" is no number that can be used",
        "2026-03-04T05:01:00Z,2,388,4 3|thickness_mm \"4 3\" is no number that can be used",
        "2026-03-04T05:01:00Z,2,NaN,43|mass_kg \"NaN\" is no number that can be used",
        "2026-03-04T05:01:00Z,2,Infinity,43|mass_kg \"Infinity\" is no number that can be used",
        "2026-03-04T05:01:00Z,2,1e400,43|mass_kg \"1e400\" is no number that can be used",
        "2026-03-04T05:01:00Z,2,388|there are 3 cells where the headings are 4; check the separators, and quote a cell that holds one",
        "2026-03-04T05:01:00Z,2,388,43,1|there are 5 cells where the headings are 4; check the separators, and quote a cell that holds one",
        "2026-03-04T05:01:00Z,2,388,\"43|a quote opens a cell and does not close it before a separator; close it or take it out",
        "2026-03-04T05:01:00Z,2,388,4\u00003|it holds NUL bytes, as after a loss of power while it was written"
      })
  void setsAsideRowsThatCannotBeRead(String row, String reason) throws IntakeException {
    assertThat(reason(row)).isEqualTo(reason);
  }

  @Test
  void keepsARowOfWhichOnlyOneCharacteristicIsMissing() throws IntakeException {
    CastingRecord record =
        LogText.read(
            folder,
            NO_PROFILE,
            "cast_at,mold,mass_kg,thickness_mm",
            "2026-03-04T05:00:00Z,1,388,",
            "2026-03-04T05:00:30Z,2,,43");
    assertThat(values(wheel(record), "mass")).containsExactly(388, Double.NaN);
    assertThat(values(wheel(record), "thickness")).containsExactly(Double.NaN, 43);
  }

  @Test
  void setsAsideMassesThatOverflowOnlyOnceConverted() throws IntakeException {
    assertThat(
            reason(
                NO_PROFILE,
                "cast_at,mold,mass_t",
                "2026-03-04T05:00:00Z,1,0.388",
                "2026-03-04T05:01:00Z,2,1e308"))
        .isEqualTo("mass_t \"1e308\" is no number that can be used");
  }

  /** Squares of larger values, and squares of their sums, would in the end be infinite. */
  @ParameterizedTest
  @CsvSource({"1e15, 1.1e15", "-1e15, -1e16", "1e-75, 1e-76", "0, 4.9e-324"})
  void setsAsideMassesThatNoGaugeReads(String kept, String not) throws IntakeException {
    assertThat(
            reason(
                NO_PROFILE,
                "cast_at,mold,mass_kg",
                "2026-03-04T05:00:00Z,1," + kept,
                "2026-03-04T05:01:00Z,2," + not))
        .isEqualTo("mass_kg \"" + not + "\" is no number that can be used");
  }

  @Test
  void takesPointsThatNoGaugeReadsForMissing() throws IntakeException {
    assertThat(
            reason(
                NO_PROFILE,
                "cast_at,mold,thickness_a_mm,thickness_b_mm",
                "2026-03-04T05:00:00Z,1,43,44",
                "2026-03-04T05:01:00Z,2,-1.5e308,1.5e308"))
        .contains("one of the thickness points is missing");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2026-03-04T05:01:00Z,2,440.9,1.7|mass_lb \"440.9\" lies outside the plausible 441 to 1323 lb of the profile",
        "2026-03-04T05:01:00Z,2,1323.1,1.7|mass_lb \"1323.1\" lies outside the plausible 441 to 1323 lb of the profile",
        "2026-03-04T05:01:00Z,2,800,5|thickness_in \"5\" lies outside the plausible 20 to 90 mm of the profile"
      })
  void setsAsideWhatIsImplausibleInTheUnitOfTheProfile(String row, String reason)
      throws IntakeException {
    String profile =
        "characteristics: {mass: {unit: lb, plausible: [441, 1323]}, thickness: {plausible: [20, 90]}}";
    assertThat(
            reason(
                profile,
                "cast_at,mold,mass_lb,thickness_in",
                "2026-03-04T05:00:00Z,1,441,1.7",
                row))
        .isEqualTo(reason);
  }

  @Test
  void setsAsideAnImplausiblePointWedgeOrDeviation() throws IntakeException {
    String profile =
        "characteristics: {thickness: {plausible: [20, 90]}, wedge: {plausible: [0, 10]},"
            + " mass_deviation: {plausible: [-50, 50]}}";
    CastingRecord record =
        LogText.read(
            folder,
            profile,
            "cast_at,mold,mass_kg,target_mass_kg,thickness_a_mm,thickness_b_mm",
            "2026-03-04T05:00:00Z,1,388,388,43,44",
            "2026-03-04T05:00:30Z,2,388,388,43,99",
            "2026-03-04T05:01:00Z,3,388,388,43,54.5",
            "2026-03-04T05:01:30Z,4,388,300,43,44");
    assertThat(reasons(record))
        .containsExactly(
            "thickness_b_mm \"99\" lies outside the plausible 20 to 90 mm of the profile",
            "wedge 11.5 lies outside the plausible 0 to 10 mm of the profile",
            "mass_deviation 88 lies outside the plausible -50 to 50 kg of the profile");
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "27", "A", "-1", "1.5", "99999999999999999999"})
  void setsAsideMoldsThatTheWheelDoesNotHave(String mold) throws IntakeException {
    assertThat(
            reason(
                "molds: 26",
                "cast_at,mold,mass_kg",
                "2026-03-04T05:00:00Z,026,388",
                "2026-03-04T05:01:00Z," + mold + ",388"))
        .isEqualTo(
            "mold \""
                + mold
                + "\" is none of the wheel's molds 1 to 26; correct it, or molds in the profile");
  }

  @Test
  void setsAsideTimesThatRunBackwardsBeyondWhatIsAllowed() throws IntakeException {
    CastingRecord record =
        LogText.read(
            folder,
            NO_PROFILE,
            "cast_at,wheel,mold,mass_kg",
            "2026-03-04T05:10:00Z,E,1,388",
            "2026-03-04T05:09:00Z,E,2,388", // 60 s are allowed
            "2026-03-04T05:08:59.999Z,E,3,388", // against the latest, not against the last
            "2026-03-04T04:00:00Z,W,1,388", // each wheel has its own clock
            "2026-03-04T05:10:00Z,E,3,388");
    assertThat(reasons(record))
        .containsExactly(
            "its time is 60.001 s before the one in line 2 (2026-03-04T05:10:00Z); the profile's"
                + " backwards_seconds allows 60");
    assertThat(record.rowsKept()).isEqualTo(4);
  }

  @Test
  void letsTheProfileSayHowFarTimesMayRunBackwards() throws IntakeException {
    CastingRecord record =
        LogText.read(
            folder,
            "backwards_seconds: 0",
            "cast_at,mold,mass_kg",
            "2026-03-04T05:10:00Z,1,388",
            "2026-03-04T05:10:00Z,2,388",
            "2026-03-04T05:09:59Z,3,388");
    assertThat(record.rowsKept()).isEqualTo(2);
  }

  @Test
  void setsAsideTheLaterOfTwoRowsOfTheSameTurnAndMold() throws IntakeException {
    CastingRecord record =
        LogText.read(
            folder,
            NO_PROFILE,
            "cast_at,wheel,turn,mold,mass_kg",
            "2026-03-04T05:00:00Z,E,1,7,381",
            "2026-03-04T05:00:10Z,W,1,7,382",
            "2026-03-04T05:00:20Z,E,2,7,383",
            "2026-03-04T05:00:30Z,E,1,07,384",
            "2026-03-04T05:00:40Z,E,1,8,abc",
            "2026-03-04T05:00:50Z,E,1,8,386");
    assertThat(reasons(record))
        .containsExactly(
            "turn 1 and mold \"7\" came before; if the counter restarts with each charge, leave the"
                + " column out and turns are counted",
            "mass_kg \"abc\" is no number that can be used");
    assertThat(values(record.wheels().get(0), "mass")).containsExactly(381, 383, 386);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "one|turn \"one\" is no whole number",
        "1.5|turn \"1.5\" is no whole number",
        "1e10|turn \"1e10\" is no whole number",
        "''|turn is missing; if there are no turns, leave the column out and they are counted"
      })
  void setsAsideTurnsThatAreNoWholeNumbers(String turn, String reason) throws IntakeException {
    assertThat(
            reason(
                NO_PROFILE,
                "cast_at,turn,mold,mass_kg",
                "2026-03-04T05:00:00Z,1.0,1,388",
                "2026-03-04T05:01:00Z," + turn + ",1,388"))
        .isEqualTo(reason);
  }

  @Test
  void learnsNothingFromARowThatIsSetAside() throws IntakeException {
    CastingRecord record =
        LogText.read(
            folder,
            NO_PROFILE,
            "cast_at,wheel,mold,ladle,mass_kg,hue",
            "2026-03-04T05:00:00Z,E,1,A,388,red",
            "2026-03-04T09:00:00Z,E,99,Z,abc,blue",
            "2026-03-04T09:00:00Z,X,99,Z,abc,blue",
            "2026-03-04T05:00:30Z,E,2,A,388,red");
    assertThat(wheel(record).molds().names()).containsExactly("1", "2");
    assertThat(wheel(record).sides().names()).containsExactly("A");
    assertThat(LogText.setting(wheel(record), "hue").labels().names()).containsExactly("red");
    assertThat(record.rowsKept()).isEqualTo(2);
  }

  @Test
  void setsAsideMoldsAndWheelsBeyondWhatAPlantHas() throws IntakeException {
    List<String> lines = new ArrayList<>(List.of("cast_at,wheel,mold,mass_kg"));
    for (int i = 0; i < 1001; i++) {
      lines.add("2026-03-04T05:00:00Z,E," + i + ",388");
    }
    for (int i = 0; i < 64; i++) {
      lines.add("2026-03-04T05:00:00Z,E" + i + ",1,388");
    }
    assertThat(reasons(LogText.read(folder, NO_PROFILE, lines.toArray(String[]::new))))
        .containsExactly(
            "there are more than 1000 molds; check what the column mold holds",
            "there are more than 64 wheels; check what the column wheel holds");
  }
}
