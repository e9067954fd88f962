package org.evenpour.report.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.LimitsUsed;
import org.evenpour.report.Reports;
import org.evenpour.report.Sentences;
import org.evenpour.words.Words;
import org.junit.jupiter.api.Test;

class LimitsTableTest {
  private final AuditReport plant = Reports.plant();
  private final Sentences sentences =
      Sentences.of(plant, Words.english(), ZoneId.of("America/Santiago"));

  @Test
  void saysWhoApprovedWhichLimitsAndWhen() {
    Instant at = Instant.parse("2024-05-13T15:30:00Z");
    LimitsUsed used =
        new LimitsUsed(
            "approved",
            3,
            at,
            "Eva",
            "new wash",
            at,
            1,
            230,
            230,
            at,
            at,
            120,
            388.1,
            1.2,
            0.7,
            null);
    assertThat(LimitsTable.whose(plant.characteristics().get(0), used, sentences))
        .isEqualTo("approved: version 3, by Eva, 13 May 2024 11:30");
  }

  @Test
  void saysThatNobodyApprovedWhatTheProgramProposed() {
    assertThat(LimitsTable.whose(plant.characteristics().get(0), sentences))
        .isEqualTo("proposed by the program, approved by nobody");
    assertThat(LimitsTable.of(plant, sentences).rows()).hasSize(3);
  }
}
