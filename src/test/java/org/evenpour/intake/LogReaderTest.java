package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.evenpour.intake.LogText.characteristics;
import static org.evenpour.intake.LogText.molds;
import static org.evenpour.intake.LogText.read;
import static org.evenpour.intake.LogText.setting;
import static org.evenpour.intake.LogText.values;
import static org.evenpour.intake.LogText.wheel;
import static org.evenpour.intake.LogText.write;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Setting;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a log may look like, and what its columns become. */
class LogReaderTest {
  private static final String NO_PROFILE = "";

  @TempDir Path folder;

  @Test
  void readsTheUsualLog() throws IntakeException {
    CastingRecord record =
        read(
            folder,
            NO_PROFILE,
            "cast_at,wheel,charge,turn,mold,ladle,crew,wash_batch,mold_serial,mass_kg,thickness_mm,"
                + "disposition,defect,spray_flow_l_min",
            "2026-03-04T05:06:07Z,N2,C17,5,1,A,red,W3,M-001,388.5,43.2,accepted,,55.5",
            "2026-03-04T05:06:36Z,N2,C17,5,2,B,red,W3,M-002,387,43,rejected,fins,");
    WheelRecord wheel = wheel(record);
    assertThat(wheel.wheel()).isEqualTo("N2");
    assertThat(wheel.rows()).isEqualTo(2);
    assertThat(Instant.ofEpochMilli(wheel.castAtMillis().get(0))).isEqualTo("2026-03-04T05:06:07Z");
    assertThat(wheel.turn().toArray()).containsExactly(5, 5);
    assertThat(molds(wheel)).containsExactly("1", "2");
    assertThat(wheel.sides().names()).containsExactly("A", "B");
    assertThat(wheel.side().toArray()).containsExactly(0, 1);
    assertThat(wheel.serials().names()).containsExactly("M-001", "M-002");
    assertThat(wheel.line().toArray()).containsExactly(2, 3);
    assertThat(characteristics(wheel)).containsExactly("mass", "thickness");
    assertThat(values(wheel, "mass")).containsExactly(388.5, 387);
    assertThat(values(wheel, "thickness")).containsExactly(43.2, 43);
    assertThat(wheel.settings())
        .extracting(Setting::name)
        .containsExactly("charge", "crew", "wash_batch", "spray_flow_l_min");
    assertThat(setting(wheel, "charge").categories()).isNotNull();
    assertThat(Objects.requireNonNull(setting(wheel, "spray_flow_l_min").numbers()).toArray())
        .containsExactly(55.5, Double.NaN);
    assertThat(setting(wheel, "spray_flow_l_min").unit()).isEqualTo(Unit.of("l_min"));
    assertThat(Objects.requireNonNull(wheel.disposition()).labels().names())
        .containsExactly("accepted", "rejected");
    assertThat(Objects.requireNonNull(wheel.defect()).labels().names()).containsExactly("fins");
    assertThat(record.logs()).containsExactly("june.csv");
    assertThat(record.rowsRead()).isEqualTo(2);
    assertThat(record.rowsSetAside()).isZero();
    assertThat(record.warnings()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {",", ";", "\t"})
  void readsEverySeparator(String separator) throws IntakeException {
    CastingRecord record =
        read(
            folder,
            NO_PROFILE,
            "cast_at,mold,mass_kg".replace(",", separator),
            "2026-03-04T05:06:07Z,1,388.5".replace(",", separator));
    assertThat(values(wheel(record), "mass")).containsExactly(388.5);
  }

  @ParameterizedTest
  @ValueSource(strings = {";", "\t"})
  void readsDecimalCommas(String separator) throws IntakeException {
    CastingRecord record =
        read(
            folder,
            NO_PROFILE,
            "cast_at;mold;mass_kg;bath_c".replace(";", separator),
            "2026-03-04 05:06:07,5Z;1;388,5;1180,25".replace(";", separator));
    assertThat(values(wheel(record), "mass")).containsExactly(388.5);
    assertThat(Objects.requireNonNull(setting(wheel(record), "bath_c").numbers()).get(0))
        .isEqualTo(1180.25);
  }

  @Test
  void takesTheSeparatorFromTheHeadingsOutsideQuotes() throws IntakeException {
    CastingRecord record =
        read(
            folder,
            "headings: {'Peso, kg, neto, total': mass_kg}",
            "cast_at;mold;\"Peso, kg, neto, total\"",
            "2026-03-04T05:06:07Z;1;388,5");
    assertThat(values(wheel(record), "mass")).containsExactly(388.5);
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r", "\n\n", "\r\n  \r\n", "\n,,\n"})
  void readsEveryLineEndAndBlankLine(String lineEnd) throws IntakeException {
    String text =
        String.join(
            lineEnd,
            "\uFEFF",
            " Cast_At , MOLD,Mass_KG",
            "2026-03-04T05:06:07Z, 1 ,388.5",
            "2026-03-04T05:06:37Z,2,389",
            "");
    CastingRecord record = read(NO_PROFILE, write(folder, "june.csv", text));
    assertThat(values(wheel(record), "mass")).containsExactly(388.5, 389);
    assertThat(record.rowsRead()).isEqualTo(2);
  }

  @Test
  void readsQuotedCells() throws IntakeException {
    CastingRecord record =
        read(
            folder,
            NO_PROFILE,
            "\"cast_at\",\"mold\",\"mass_kg\",\"note\"",
            "\"2026-03-04T05:06:07Z\",\"1\",\"388.5\",\"slow, then \"\"fast\"\"",
            "a second line\"",
            "2026-03-04T05:06:37Z,2,389,plain");
    WheelRecord wheel = wheel(record);
    assertThat(values(wheel, "mass")).containsExactly(388.5, 389);
    assertThat(setting(wheel, "note").labels().names())
        .containsExactly("slow, then \"fast\"\na second line", "plain");
    assertThat(wheel.line().toArray()).containsExactly(2, 4);
  }

  @Test
  void readsLatin1AndSaysSoOnce() throws IOException, IntakeException {
    Path log = folder.resolve("june.csv");
    Files.write(
        log,
        "cast_at,mold,mass_kg,crew\n2026-03-04T05:06:07Z,1,388,Équipe\n2026-03-04T05:06:37Z,2,388,é\n"
            .getBytes(StandardCharsets.ISO_8859_1));
    CastingRecord record = read(NO_PROFILE, log);
    assertThat(setting(wheel(record), "crew").labels().names()).containsExactly("Équipe", "é");
    assertThat(record.warnings()).hasSize(1);
    assertThat(record.warnings().get(0))
        .asString()
        .startsWith("june.csv:2: this line is not UTF-8");
  }

  @Test
  void convertsUnitsOfWhatIsJudgedAndNotOfSettings() throws IntakeException {
    WheelRecord wheel =
        wheel(
            read(
                folder,
                NO_PROFILE,
                "cast_at,mold,mass_lb,thickness_in,water_f",
                "2026-03-04T05:06:07Z,1,700,1.75,68"));
    // 1 lb = 0.45359237 kg and 1 in = 25.4 mm by definition (1959)
    assertThat(values(wheel, "mass")[0]).isCloseTo(317.514659, within(1e-9));
    assertThat(values(wheel, "thickness")[0]).isCloseTo(44.45, within(1e-9));
    assertThat(wheel.characteristics())
        .extracting(one -> one.displayUnit().suffix())
        .containsExactly("lb", "in");
    assertThat(Objects.requireNonNull(setting(wheel, "water_f").numbers()).get(0)).isEqualTo(68);
  }

  @Test
  void makesThicknessAndWedgeOfPoints() throws IntakeException {
    WheelRecord wheel =
        wheel(
            read(
                folder,
                NO_PROFILE,
                "cast_at,mold,mass_kg,thickness_top_left_mm,thickness_center_mm,thickness_low_cm",
                "2026-03-04T05:06:07Z,1,388,42,43,4.4",
                "2026-03-04T05:06:37Z,2,388,42,,4.4",
                "2026-03-04T05:07:07Z,3,388,42,?,4.4"));
    assertThat(characteristics(wheel)).containsExactly("mass", "thickness", "wedge");
    assertThat(values(wheel, "thickness")).containsExactly(43, Double.NaN, Double.NaN);
    assertThat(values(wheel, "wedge")).containsExactly(2, Double.NaN, Double.NaN);
    assertThat(wheel.points())
        .extracting(point -> point.point())
        .containsExactly("top_left", "center", "low");
    assertThat(wheel.points().get(2).values().toArray()).containsExactly(44, 44, 44);
  }

  @Test
  void usesThePointsWhereBothPointsAndAThicknessAreGiven() throws IntakeException {
    CastingRecord record =
        read(
            folder,
            NO_PROFILE,
            "cast_at,mold,thickness_mm,thickness_a_mm,thickness_b_mm",
            "2026-03-04T05:06:07Z,1,99,42,44");
    assertThat(values(wheel(record), "thickness")).containsExactly(43);
    assertThat(record.warnings())
        .singleElement()
        .asString()
        .contains("\"thickness_mm\" is not used");
  }

  @Test
  void judgesMassAgainstATargetThatVaries() throws IntakeException {
    WheelRecord wheel =
        wheel(
            read(
                folder,
                NO_PROFILE,
                "cast_at,mold,mass_kg,target_mass_kg",
                "2026-03-04T05:06:07Z,1,388,388",
                "2026-03-04T05:06:37Z,2,391,390",
                "2026-03-04T05:07:07Z,3,391,"));
    assertThat(characteristics(wheel)).containsExactly("mass", "mass_deviation");
    assertThat(values(wheel, "mass_deviation")).containsExactly(0, 1, Double.NaN);
    assertThat(wheel.settings()).isEmpty();
  }

  @Test
  void judgesMassAloneWhereTheTargetIsAlwaysTheSame() throws IntakeException {
    WheelRecord wheel =
        wheel(
            read(
                folder,
                NO_PROFILE,
                "cast_at,mold,mass_kg,target_mass_kg",
                "2026-03-04T05:06:07Z,1,388,388",
                "2026-03-04T05:06:37Z,2,391,388"));
    assertThat(characteristics(wheel)).containsExactly("mass");
    assertThat(wheel.settings()).isEmpty();
  }

  @Test
  void keepsTwinWheelsThatAreInterleavedApart() throws IntakeException {
    CastingRecord record =
        read(
            folder,
            NO_PROFILE,
            "cast_at,wheel,mold,ladle,mass_kg,flow_l_min",
            "2026-03-04T05:00:00Z,W,1,A,381,50",
            "2026-03-04T05:00:10Z,E,1,A,391,60",
            "2026-03-04T05:00:20Z,W,2,B,382,",
            "2026-03-04T05:00:30Z,E,2,A,392,61",
            "2026-03-04T05:00:40Z,W,1,A,383,51");
    assertThat(record.wheels()).extracting(WheelRecord::wheel).containsExactly("E", "W");
    assertThat(values(record.wheels().get(1), "mass")).containsExactly(381, 382, 383);
    assertThat(record.wheels().get(1).turn().toArray()).containsExactly(1, 1, 2);
    assertThat(record.wheels().get(0).sides().names()).containsExactly("A");
    assertThat(
            Objects.requireNonNull(setting(record.wheels().get(1), "flow_l_min").numbers())
                .toArray())
        .containsExactly(50, Double.NaN, 51);
  }

  @Test
  void writesNumbersOfMoldsInOneWay() throws IntakeException {
    WheelRecord wheel =
        wheel(
            read(
                folder,
                NO_PROFILE,
                "cast_at,mold,mass_kg",
                "2026-03-04T05:00:00Z,07,388",
                "2026-03-04T05:00:30Z,7,388",
                "2026-03-04T05:01:00Z,7.0,388",
                "2026-03-04T05:01:30Z,0,388",
                "2026-03-04T05:02:00Z,7a,388"));
    assertThat(molds(wheel)).containsExactly("7", "7", "7", "0", "7a");
    assertThat(wheel.molds().names()).containsExactly("7", "0", "7a");
  }

  @Test
  void readsLogsInTheOrderOfTheirTimesWithTheColumnsOfAll() throws IntakeException {
    Path july =
        write(
            folder,
            "july.csv",
            "mass_kg;mold;cast_at;flow_l_min\n389,5;1;2026-07-01T00:00Z;50\n390;2;2026-07-01T00:01Z;51\n");
    Path june =
        write(
            folder,
            "zz-june.csv",
            "cast_at,mold,mass_lb,thickness_mm,crew\nnever,1,800,43,red\n2026-06-30T23:00Z,1,800,43,red\n");
    CastingRecord record = read(NO_PROFILE, july, june);
    WheelRecord wheel = wheel(record);
    assertThat(record.logs()).containsExactly("zz-june.csv", "july.csv");
    assertThat(values(wheel, "mass")[1]).isEqualTo(389.5);
    assertThat(values(wheel, "thickness")).containsExactly(43, Double.NaN, Double.NaN);
    assertThat(Objects.requireNonNull(setting(wheel, "flow_l_min").numbers()).toArray())
        .containsExactly(Double.NaN, 50, 51);
    assertThat(Objects.requireNonNull(setting(wheel, "crew").categories()).toArray())
        .containsExactly(0, -1, -1);
    assertThat(wheel.line().toArray()).containsExactly(3, (1L << 40) | 2, (1L << 40) | 3);
    assertThat(wheel.turn().toArray()).containsExactly(1, 2, 2);
    assertThat(record.rowsRead()).isEqualTo(4);
    assertThat(record.setAside()).singleElement().extracting("log").isEqualTo("zz-june.csv");
  }

  @Test
  void keepsOnlyThePeriodThatIsAskedFor() throws IntakeException {
    Path log =
        write(
            folder,
            "june.csv",
            """
            cast_at,mold,mass_kg
            2026-06-01T00:00:00Z,1,381
            2026-06-02T00:00:00Z,1,382
            2026-06-03T00:00:00Z,1,abc
            2026-06-04T00:00:00Z,1,abc
            """);
    CastingRecord record =
        LogReader.read(
            List.of(log),
            Profiles.NONE,
            List.of(),
            Instant.parse("2026-06-02T00:00:00Z"),
            Instant.parse("2026-06-04T00:00:00Z"),
            SetAside.nowhere(),
            Progress.NONE);
    assertThat(values(wheel(record), "mass")).containsExactly(382);
    assertThat(record.rowsRead()).isEqualTo(2);
    assertThat(record.rowsSetAside()).isEqualTo(1);
    assertThat(record.warnings()).singleElement().asString().startsWith("2 rows lie outside");
  }

  @Test
  void saysWhatPeriodTheLogHasWhenNoneOfItIsAskedFor() {
    Path log = write(folder, "june.csv", "cast_at,mold,mass_kg\n2026-06-01T00:00:00Z,1,381\n");
    assertThatThrownBy(
            () ->
                LogReader.read(
                    List.of(log),
                    Profiles.NONE,
                    List.of(),
                    Instant.parse("2027-01-01T00:00:00Z"),
                    null,
                    SetAside.nowhere(),
                    Progress.NONE))
        .isInstanceOf(IntakeException.class)
        .hasMessageContaining("run from 2026-06-01T00:00:00Z to 2026-06-01T00:00:00Z");
  }

  @Test
  void readsTimesWithoutOffsetInTheZoneOfTheirWheel() throws IntakeException {
    CastingRecord record =
        read(
            folder,
            "{wheel: A, zone: America/Santiago}\n---\n{zone: '+02:00'}",
            "cast_at,wheel,mold,mass_kg",
            "2026-01-15T12:00:00,A,1,388",
            "2026-01-15T12:00:00,B,1,388",
            "2026-07-15T12:00:00,A,1,388",
            "2026-07-15T12:00:00Z,B,1,388");
    // Santiago: UTC−3 in summer, UTC−4 in winter (IANA time zone data base)
    assertThat(record.wheels().get(0).castAtMillis().toArray())
        .containsExactly(
            Instant.parse("2026-01-15T15:00:00Z").toEpochMilli(),
            Instant.parse("2026-07-15T16:00:00Z").toEpochMilli());
    assertThat(Instant.ofEpochMilli(record.wheels().get(1).castAtMillis().get(0)))
        .isEqualTo("2026-01-15T10:00:00Z");
    assertThat(record.warnings()).isEmpty();
  }

  @Test
  void warnsThatTimesWithoutOffsetAreTakenAsUtc() throws IntakeException {
    CastingRecord record =
        read(folder, NO_PROFILE, "cast_at,mold,mass_kg", "2026-01-15T12:00:00,1,388");
    assertThat(record.warnings()).singleElement().asString().contains("taken as UTC");
  }

  @Test
  void castsThroughTheNightInWhichTheClockIsPutBack() throws IntakeException {
    List<String> lines = new ArrayList<>(List.of("cast_at,mold,mass_kg"));
    // From 00:30 UTC to 02:30 UTC, as the wall showed it in Berlin on 2025-10-26.
    for (int minute = 0; minute < 120; minute += 5) {
      int wall = minute + 150 - (minute >= 30 ? 60 : 0);
      lines.add(
          String.format(
              java.util.Locale.ROOT, "2025-10-26T%02d:%02d:00,1,388", wall / 60, wall % 60));
    }
    CastingRecord record = read(folder, "zone: Europe/Berlin", lines.toArray(String[]::new));
    assertThat(record.rowsSetAside()).isZero();
    WheelRecord wheel = wheel(record);
    for (int row = 1; row < wheel.rows(); row++) {
      assertThat(wheel.castAtMillis().get(row) - wheel.castAtMillis().get(row - 1))
          .isEqualTo(300_000);
    }
  }

  @Test
  void keepsValuesThatNoProfileCallsImplausible() throws IntakeException {
    // Such values occur in the reference data of NIST.
    WheelRecord wheel =
        wheel(
            read(
                folder,
                NO_PROFILE,
                "cast_at,mold,mass_kg",
                "2026-03-04T05:00:00Z,1,1000000000000.4",
                "2026-03-04T05:00:30Z,1,-2",
                "2026-03-04T05:01:00Z,1,0"));
    assertThat(values(wheel, "mass")).containsExactly(1000000000000.4, -2, 0);
  }

  @Test
  void mapsThePlantsOwnHeadings() throws IntakeException {
    CastingRecord record =
        read(
            folder,
            "{headings: {Peso kg: mass_kg, molde: mold, ' Hora': cast_at, Agua: spray_flow_l_min},"
                + " settings: {spray_flow_l_min: {group: cooling, lag_turns: 1}}}",
            "HORA;Molde;peso KG;agua",
            "2026-03-04T05:00:00Z;1;388,5;55");
    Setting flow = setting(wheel(record), "spray_flow_l_min");
    assertThat(flow.profile().group()).isEqualTo("cooling");
    assertThat(flow.profile().lagTurns()).isEqualTo(1);
    assertThat(values(wheel(record), "mass")).containsExactly(388.5);
  }

  @Test
  void tellsHowFarItHasCome() throws IntakeException {
    Path log = write(folder, "a.csv", "cast_at,mold,mass_kg\n2026-03-04T05:00:00Z,1,388\n");
    List<Long> done = new ArrayList<>();
    LogReader.read(
        List.of(log),
        Profiles.NONE,
        List.of(),
        null,
        null,
        SetAside.nowhere(),
        (bytes, total) -> {
          done.add(bytes);
          assertThat(total).isEqualTo(48);
        });
    assertThat(done).containsExactly(48L);
  }

  @Test
  void tellsOfPointsThatMayPartThousandsWhereCommasAreDecimal()
      throws IOException, IntakeException {
    String log =
        """
        cast_at;mold;mass_kg;flow
        2026-03-04T05:00:00Z;1;388,5;1.171
        2026-03-04T05:01:00Z;2;389,1;982
        2026-03-04T05:02:00Z;3;388,2;1.204
        """;
    assertThat(warnings(log))
        .containsExactly(
            "log.csv:2: \"flow 1.171\" was read with a decimal point, as were 2 cells in all, though"
                + " this log has decimal commas; if the point parts thousands, write it without");
    assertThat(warnings(log.replace("388,5", "388,5").replace("1.204", "1204")))
        .containsExactly(
            "log.csv:2: \"flow 1.171\" was read with a decimal point, though this log has decimal"
                + " commas; if the point parts thousands, write it without");
    assertThat(warnings(log.replace(',', '.'))).as("a log with decimal points").isEmpty();
    assertThat(warnings(log.replace("1.171", "0.171").replace("1.204", "12.04"))).isEmpty();
  }

  private List<String> warnings(String log) throws IOException, IntakeException {
    Path file = Files.writeString(folder.resolve("log.csv"), log);
    return LogText.read("", file).warnings().stream().map(Object::toString).toList();
  }

  @Test
  void readsOverALineOfTwoHundredMegabytes() throws IOException, IntakeException {
    Path log = folder.resolve("june.csv");
    byte[] junk = "x,y;".repeat(1 << 18).getBytes(StandardCharsets.UTF_8);
    try (var out = Files.newOutputStream(log)) {
      out.write(
          "cast_at,mold,mass_kg\n2026-03-04T05:00:00Z,1,388\n".getBytes(StandardCharsets.UTF_8));
      for (int i = 0; i < 200; i++) {
        out.write(junk);
      }
      out.write("\n2026-03-04T05:00:30Z,2,389\n".getBytes(StandardCharsets.UTF_8));
    }
    CastingRecord record = read(NO_PROFILE, log);
    assertThat(values(wheel(record), "mass")).containsExactly(388, 389);
    assertThat(wheel(record).line().toArray()).containsExactly(2, 4);
    assertThat(LogText.reasons(record)).containsExactly("it is longer than 1 MiB");
    assertThat(record.setAside().get(0).text()).hasSizeLessThan(300).endsWith("…");
  }
}
