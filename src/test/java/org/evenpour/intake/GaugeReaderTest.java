package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Instant;
import org.evenpour.casting.GaugeFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GaugeReaderTest {

  @TempDir Path folder;

  private GaugeFile read(String text) throws IntakeException {
    return GaugeReader.read(LogText.write(folder, "gauge.csv", text), Profiles.NONE);
  }

  @Test
  void readsAStudyInWhicheverOrderItWasMeasured() throws IntakeException {
    GaugeFile file =
        read(
            """
            \uFEFFOperator;Part;Mass_lb;note;thickness_mm\r
            R;A7;100;;44,1\r
            S;A7;101;;44,2\r
            R;B2;102,5;late;44,3\r
            S;B2;103;;44,4\r
            S;B2;104;;44,5\r
            R;A7;105;;44,6\r
            S;A7;106;;44,7\r
            R;B2;107;;44,8\r
            """);
    assertThat(file.name()).isEqualTo("gauge.csv");
    assertThat(file.checks()).isEmpty();
    assertThat(file.studies()).hasSize(2);
    GaugeFile.Study mass = file.studies().get(0);
    assertThat(mass.characteristic()).isEqualTo("mass");
    assertThat(mass.displayUnit().suffix()).isEqualTo("lb");
    assertThat(mass.parts()).containsExactly("A7", "B2");
    assertThat(mass.operators()).containsExactly("R", "S");
    // 1 lb = 0.45359237 kg, by definition
    assertThat(mass.measured()[1][0][0]).isCloseTo(102.5 * 0.45359237, within(1e-12));
    assertThat(file.studies().get(1).measured()[1][1]).containsExactly(44.4, 44.5);
  }

  @Test
  void readsCheckWeighingsInTheOrderOfTheirTimes() throws IntakeException {
    GaugeFile file =
        read(
            """
            at,reference_kg,mass_kg
            2026-03-04T12:00Z,400,400.6
            2026-03-03T12:00Z,400,400.4
            """);
    assertThat(file.studies()).isEmpty();
    assertThat(file.checks().get(0).readings())
        .containsExactly(
            new GaugeFile.Reading(Instant.parse("2026-03-03T12:00:00Z"), 400, 400.4),
            new GaugeFile.Reading(Instant.parse("2026-03-04T12:00:00Z"), 400, 400.6));
  }

  /** Line by line, and what mends it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "part,operator,mass_kg/1,R,390/1,R,x                  |:3: mass_kg \"x\" is no number",
        "part,operator,mass_kg/1,R,390/,R,390                 |:3: part is missing; say which part",
        "part,operator,mass_kg/1,R,390/1,R,                   |:3: mass_kg is missing",
        "part,operator,mass_kg/1,R,NaN                        |:2: mass_kg \"NaN\" is no number",
        "part,operator,mass_kg                                |no row below the headings",
        "part,operator,kg/1,R,390                             |:1: there is no column mass_kg or",
        "part,mass_kg/1,390                                   |:1: there is no column operator",
        "part,operator,mass_kg,mass_lb/1,R,1,1                |:1: there are several columns",
        "part,operator,mass_kg,mass_kg/1,R,1,1                |:1: the columns 3 and 4 are both",
        "part,operator,mass_kg/1,R,1/1,R,2                    |1 part and 1 operator; it takes at",
        "part,operator,mass_kg/1,R,1/1,S,2/2,R,2/2,S,2        |was measured once by \"R\"; let every",
        "part,operator,mass_kg/1,R,1/1,R,1/1,S,2/1,S,2/2,R,2/2,R,2/2,S,2|:8: part \"2\" was measured 1 time by \"S\", but \"1\" 2 times",
        "at,reference_kg,mass_kg/yesterday,400,400            |:2: at \"yesterday\" is no time",
        "at,reference_kg,mass_kg/2026-03-04T12:00Z,400,400    |:2: this is one reading only",
        "at,reference_kg,mass_kg/2026-03-04T12:00Z,,400       |:2: reference_kg is missing",
        "at,reference,mass_kg/2026-03-04T12:00Z,1,400         |:1: there is no column part",
        "at,reference_pt,mass_kg/2026-03-04T12:00Z,1,400      |:1: \"reference_pt\" has no unit",
        "at,reference_mm,mass_kg/2026-03-04T12:00Z,1,400      |:1: the reference is of another kind",
        "at,part,operator,reference_kg,mass_kg/2026-03-04T12:00Z,1,R,1,400|make two files",
        "part,operator,mass_kg/1,R                            |:2:",
      })
  void saysWhereAFileIsWrongAndWhatMendsIt(String file, String message) {
    assertThatThrownBy(() -> read(file.strip().replace('/', '\n') + "\n"))
        .isInstanceOf(IntakeException.class)
        .hasMessageContaining("gauge.csv")
        .hasMessageContaining(message);
  }
}
