package org.evenpour.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Signal;
import org.junit.jupiter.api.Test;

class SummaryTest {
  private static final ZoneId SANTIAGO = ZoneId.of("America/Santiago");

  @Test
  void tellsTheCrewLeadWhatToLookAt() {
    assertThat(Summary.text(Reports.plant(), SANTIAGO))
        .isEqualTo(
            """
            Wheel N2   12 May 2024 02:00 to 14 May 2024 08:56   America/Santiago
            Anodes 5,980 · molds 26 · turns 230 · rows read 5,992 · rows set aside 12

                       mean       s.d.  Cpk (95 %)           Ppk (95 %)           outside
            mass       388.20 kg  2.60  1.57 (1.54 to 1.60)  1.26 (1.23 to 1.29)  0.3 %    not stable
            thickness  43.25 mm   0.62  1.65 (1.62 to 1.68)  1.32 (1.29 to 1.35)  0.3 %    not stable
            wedge      1.10 mm    0.45  1.76 (1.73 to 1.79)  1.41 (1.38 to 1.44)  0.3 %    not stable
            At one false alarm a shift, the charts find on average: mass, 2.0 kg in one mold in 9 turns,
              wheel-wide in 12; thickness, 2.0 mm in one mold in 9 turns, wheel-wide in 12.

            Look first at:
              The whole wheel runs heavy since turn 224 (Tue 14 May 07:30): +2.1 kg.
              Mold 17 runs thin since turn 212 (Tue 14 May 04:38): −1.1 mm. Wash volume fell with it by 40 mL
                (that would explain all of it). Check first that the mold is dry. Look at its spray nozzle.
              Mold 9 ran more wedge from turn 40 (Sun 12 May 11:33) to turn 120: +0.62 mm. Recorded when it
                began: mold change (turn 40). Check first that the mold is dry. Mold work is hot and heavy:
                wheel stopped and locked, people back. Check that the new mold stands level.
              One anode of mold 5 came out light at turn 99 (Mon 13 May 01:39): −14.2 kg.
              No recorded setting explains one of these. The whole wheel: weigh a known mass on the scale, then
                look at skull, tare and cut-off.

            Note: The limits rest on the first 100 turns of this log.
            Evenpour advises and never controls; plant procedures come first.
            """);
  }

  @Test
  void saysWhenNothingStandsOutAndThenGivesNoAdvice() {
    String summary = Summary.text(Reports.with(Reports.plant(), List.of()), SANTIAGO);
    assertThat(summary)
        .contains("Nothing stands out: no signal in this log.")
        .doesNotContain("not stable")
        .doesNotContain("advises");
  }

  @Test
  void saysThatThereIsNoSpecification() {
    assertThat(Summary.text(Reports.bare(), ZoneOffset.UTC))
        .contains("mass  388.00 kg  —     —           —           —        no specification");
  }

  @Test
  void staysOnOneScreenHoweverMuchThereIsToSay() {
    AuditReport plant = Reports.plant();
    List<Signal> signals = new ArrayList<>();
    for (int i = 1; i <= 26; i++) {
      signals.add(Reports.moldSignal("S" + i, Integer.toString(i), 13 * ((i * 7) % 16), -0.1 * i));
    }
    AuditReport many =
        new AuditReport(
            plant.log(),
            Collections.nCopies(9, plant.characteristics().get(0)),
            signals,
            plant.verdicts(),
            plant.settings(),
            plant.events(),
            plant.setAside(),
            Collections.nCopies(40, plant.notes().get(0)),
            List.of(),
            List.of());
    for (AuditReport report : List.of(many, Reports.nasty())) {
      List<String> lines = Summary.text(report, SANTIAGO).lines().toList();
      assertThat(lines).hasSizeLessThanOrEqualTo(Summary.LINES);
      assertThat(lines)
          .allSatisfy(
              line ->
                  assertThat(line.codePointCount(0, line.length()))
                      .isLessThanOrEqualTo(Summary.COLUMNS));
    }
    assertThat(Summary.text(many, SANTIAGO))
        .contains("more signals, in the workbook")
        .contains("and 5 more, in the workbook")
        .contains("more notes, in the workbook");
  }

  @Test
  void neverLetsALogCommandTheTerminal() {
    assertThat(Summary.text(Reports.nasty(), SANTIAGO))
        .doesNotMatch("(?s).*[\\x00-\\x09\\x0b-\\x1f\\x7f].*");
  }

  @Test
  void isTheSameWhateverTheMachinesLanguage() {
    Locale before = Locale.getDefault();
    String here = Summary.text(Reports.plant(), SANTIAGO);
    try {
      for (String language : List.of("tr-TR", "de-DE", "ar-EG", "es-CL")) {
        Locale.setDefault(Locale.forLanguageTag(language));
        assertThat(Summary.text(Reports.plant(), SANTIAGO)).isEqualTo(here);
      }
    } finally {
      Locale.setDefault(before);
    }
  }
}
