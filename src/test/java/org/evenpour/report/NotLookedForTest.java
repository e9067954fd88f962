package org.evenpour.report;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.evenpour.audit.Audit;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.NotLookedFor;
import org.evenpour.findings.NotLookedFor.Reason;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;
import org.evenpour.report.json.JsonReport;
import org.evenpour.report.workbook.AuditWorkbook;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Nothing is claimed that was not looked for: whole logs that no limits can be made of. */
class NotLookedForTest {
  private static final String QUIET = "Nothing stands out: no signal in this log.";

  @TempDir Path folder;

  private interface Value {
    double of(int turn, int mold);
  }

  private AuditReport audit(int turns, int molds, int sides, Value mass, @Nullable Value thick)
      throws Exception {
    StringBuilder log = new StringBuilder("cast_at,turn,mold,ladle,mass_kg");
    log.append(thick == null ? "\n" : ",thickness_mm\n");
    for (int t = 0; t < turns; t++) {
      for (int m = 0; m < molds; m++) {
        Instant at = Instant.parse("2026-03-02T06:00:00Z").plusSeconds(600L * t + 20L * m);
        String side = sides == 1 ? "" : m % 2 == 0 ? "A" : "B";
        log.append(
            String.format(Locale.ROOT, "%s,%d,%d,%s,%.6f", at, t + 1, m + 1, side, mass.of(t, m)));
        log.append(thick == null ? "" : String.format(Locale.ROOT, ",%.6f", thick.of(t, m)));
        log.append('\n');
      }
    }
    Path file = Files.writeString(folder.resolve("log.csv"), log.toString());
    return Audit.run(
        LogReader.read(
            List.of(file),
            Profiles.NONE,
            List.of(),
            null,
            null,
            SetAside.nowhere(),
            Progress.NONE));
  }

  private static Value scattered() {
    Random random = new Random(8);
    return (t, m) -> 388 + random.nextGaussian();
  }

  private static String summary(AuditReport report) {
    return Summary.text(report, ZoneOffset.UTC).replaceAll("\n  ", " ");
  }

  private static Reason reason(AuditReport report, int characteristic) {
    NotLookedFor why = report.characteristics().get(characteristic).monitoring().notLookedFor();
    return requireNonNull(why).reason();
  }

  private static String noteInSpanish(AuditReport report) {
    return report.notes().stream()
        .filter(note -> note.key().equals(NotLookedFor.NOTE))
        .map(note -> note.in(Locale.forLanguageTag("es")))
        .findFirst()
        .orElse("");
  }

  @Test
  void oneRowIsNoTurnToJudgeBy() throws Exception {
    AuditReport report = audit(1, 1, 1, scattered(), null);
    assertThat(reason(report, 0)).isEqualTo(Reason.FEW_TURNS);
    assertThat(summary(report))
        .contains("Not looked for: signals of mass: no turn outside start-up, and 8 are needed.")
        .doesNotContain("Nothing stands out");
    assertThat(noteInSpanish(report))
        .isEqualTo(
            "No se buscaron señales de masa: ninguna vuelta fuera del arranque, y hacen falta 8.");
  }

  /** The first turn of a log is start-up: two are left of three. */
  @Test
  void threeTurnsAreTooFew() throws Exception {
    AuditReport report = audit(3, 8, 1, scattered(), null);
    assertThat(reason(report, 0)).isEqualTo(Reason.FEW_TURNS);
    assertThat(summary(report))
        .contains("Not looked for: signals of mass: 2 turns outside start-up, and 8 are needed.")
        .doesNotContain("Nothing stands out");
    assertThat(report.characteristics().get(0).monitoring().source())
        .isEqualTo("none: 2 turns outside start-up, and 8 are needed");
  }

  @Test
  void valuesWithoutScatterSayNothing() throws Exception {
    AuditReport report = audit(30, 8, 1, (t, m) -> 388, null);
    assertThat(reason(report, 0)).isEqualTo(Reason.NO_SCATTER);
    assertThat(summary(report))
        .contains("Not looked for: signals of mass: the values do not scatter")
        .doesNotContain("Nothing stands out");
  }

  @Test
  void threeMoldsOfFewTurnsAreTooFew() throws Exception {
    AuditReport report = audit(12, 3, 1, scattered(), null);
    assertThat(reason(report, 0)).isEqualTo(Reason.FEW_MOLDS);
    assertThat(summary(report))
        .contains("Not looked for: signals of mass: 3 molds a turn, and four are needed")
        .doesNotContain("Nothing stands out");
    assertThat(noteInSpanish(report)).contains("3 moldes por vuelta, y hacen falta cuatro");
  }

  @Test
  void twoMoldsOnEachSideMakeNoLevel() throws Exception {
    AuditReport report = audit(60, 4, 2, scattered(), null);
    assertThat(reason(report, 0)).isEqualTo(Reason.FEW_MOLDS_ON_SIDES);
    assertThat(summary(report)).contains("fewer than three molds a turn on each ladle side");
  }

  @Test
  void aWheelThatWasLookedAtIsSaidToBeQuiet() throws Exception {
    AuditReport report = audit(30, 8, 1, scattered(), null);
    assertThat(report.characteristics().get(0).monitoring().notLookedFor()).isNull();
    assertThat(report.signals()).isEmpty();
    assertThat(summary(report)).contains(QUIET).doesNotContain("Not looked for");
    assertThat(json(report).get("monitoring").has("not_looked_for")).isFalse();
    assertThat(json(report).get("stable").asBoolean()).isTrue();
  }

  /** Mass was looked at and thickness, whose gauge stands still, was not. */
  @Test
  void oneOfTwoCharacteristicsIsToldApart() throws Exception {
    AuditReport report = audit(30, 8, 1, scattered(), (t, m) -> 43);
    assertThat(report.signals()).isEmpty();
    assertThat(summary(report))
        .contains("Nothing stands out in mass: no signal.")
        .contains("Not looked for: signals of thickness: the values do not scatter")
        .doesNotContain(QUIET);
  }

  /** What was not looked for is said beside what was found, too. */
  @Test
  void signalsOfOneDoNotSilenceTheOther() throws Exception {
    Value noise = scattered();
    AuditReport report =
        audit(60, 8, 1, (t, m) -> noise.of(t, m) + (t > 40 && m == 3 ? 8 : 0), (t, m) -> 43);
    assertThat(report.signals()).isNotEmpty();
    assertThat(summary(report))
        .contains("Look first at:")
        .contains("Not looked for: signals of thickness: the values do not scatter");
  }

  @Test
  void jsonHasTheReasonByAStableName() throws Exception {
    JsonNode mass = json(audit(12, 3, 1, scattered(), null));
    assertThat(mass.get("monitoring").get("not_looked_for").asText()).isEqualTo("few-molds");
    assertThat(mass.get("monitoring").get("used").get(0).get("not_looked_for").asText())
        .isEqualTo("few-molds");
    assertThat(mass.get("stable").isNull()).isTrue();
  }

  private static JsonNode json(AuditReport report) throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    JsonReport.write(report, bytes);
    return new ObjectMapper().readTree(bytes.toByteArray()).get("characteristics").get(0);
  }

  @Test
  void theWorkbookSaysItOnItsFirstSheet() throws Exception {
    Path file = folder.resolve("audit.xlsx");
    AuditWorkbook.write(audit(12, 3, 1, scattered(), null), null, file, ZoneOffset.UTC);
    StringBuilder text = new StringBuilder();
    try (XSSFWorkbook book = new XSSFWorkbook(file.toFile().getPath())) {
      for (Row row : book.getSheet("Summary")) {
        for (Cell cell : row) {
          text.append(cell).append('\n');
        }
      }
    }
    assertThat(text)
        .contains("Not looked for: signals of mass: 3 molds a turn")
        .contains("not looked for\n")
        .doesNotContain("Nothing stands out");
  }
}
