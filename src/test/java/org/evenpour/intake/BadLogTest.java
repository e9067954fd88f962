package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.evenpour.words.Remark;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Logs of which nothing can be made, and what is said of them. */
class BadLogTest {

  @TempDir Path folder;

  private String error(byte[] bytes) {
    try {
      Path log = Files.write(folder.resolve("june.csv"), bytes);
      return errorOf(log);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private String errorOf(Path log) {
    IntakeException thrown =
        catchThrowableOfType(IntakeException.class, () -> LogText.read("", log));
    assertThat(thrown).isNotNull();
    String message = String.valueOf(thrown.getMessage());
    assertThat(message).doesNotContain("\n").startsWith(log.toString());
    return message.substring(log.toString().length());
  }

  private String error(String text) {
    return error(text.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void saysThatAFileIsNotThere() {
    assertThat(errorOf(folder.resolve("none.csv")))
        .isEqualTo(": there is no such file; check the name and the folder");
  }

  @Test
  void saysThatAFolderIsNoLog() {
    assertThat(errorOf(folder)).isEqualTo(": this is a folder; name the files that lie in it");
  }

  @ParameterizedTest
  @CsvSource({"''", "'\n\n  \r\n'", "'\uFEFF'"})
  void saysThatAFileIsEmpty(String text) {
    assertThat(error(text))
        .isEqualTo(": this file is empty; export it again, with the headings in its first line");
  }

  @Test
  void saysThatThereAreOnlyHeadings() {
    assertThat(error("cast_at,mold,mass_kg\n\n,,\n"))
        .isEqualTo(": there is no row under the headings; check the period of the export");
  }

  @Test
  void refusesUtf16AndBinaryFiles() {
    assertThat(error("cast_at,mold,mass_kg\n".getBytes(StandardCharsets.UTF_16)))
        .isEqualTo(": this is not a text log (it is UTF-16); export it as CSV in UTF-8");
    assertThat(error("cast_at,mold,mass_kg\n".getBytes(StandardCharsets.UTF_16LE)))
        .isEqualTo(": this is not a text log (it holds NUL bytes); export it as CSV in UTF-8");
    assertThat(error(new byte[] {'P', 'K', 3, 4, 0, 0})).contains("NUL bytes");
    assertThat(error(new byte[3_000_000])).contains("NUL bytes");
  }

  @Test
  void namesTheColumnsThatAreMissingAndThoseThatAreThere() {
    assertThat(error("\nHora;Molde;Peso kg\n2026-03-04;1;388\n"))
        .isEqualTo(
            ":2: there is no column cast_at and no column mold and no column mass_kg or"
                + " thickness_mm among \"Hora\", \"Molde\", \"Peso kg\"; name it so, or add to the"
                + " profile: headings: {<heading in this log>: cast_at}");
    assertThat(error("cast_at,mass_kg\n2026-03-04T05:00Z,388\n"))
        .startsWith(":1: there is no column mold among \"cast_at\", \"mass_kg\";");
  }

  @Test
  void namesBothColumnsThatMeanTheSame() {
    assertThat(error("cast_at,mold,mass_kg,Mold\n"))
        .isEqualTo(
            ":1: the columns 2 \"mold\" and 4 \"Mold\" mean the same; leave one out, or map it to"
                + " another name in the profile's headings");
    assertThat(error("cast_at,mold,mass_kg,mass_lb\n")).contains("3 \"mass_kg\" and 4 \"mass_lb\"");
    assertThat(error("cast_at,mold,thickness_a_mm,thickness_a_in\n")).contains("mean the same");
    assertThat(error("cast_at,mold,mass_kg,Flow,flow\n")).contains("4 \"Flow\" and 5 \"flow\"");
  }

  @Test
  void namesBothColumnsThatTheProfileMapsToTheSame() {
    assertThatThrownBy(
            () ->
                LogText.read(
                    folder, "headings: {Peso: mass_kg}", "cast_at,mold,mass_kg,Peso", "a,b,c,d"))
        .hasMessageContaining("3 \"mass_kg\" and 4 \"Peso\"");
  }

  @Test
  void refusesMoreThanTwoThousandColumns() {
    assertThat(error("cast_at,mold,mass_kg" + ",x".repeat(1998) + "\n"))
        .startsWith(":1: 2001 columns are more than the 2000");
  }

  @Test
  void refusesHeadingsThatAreLongerThanALineMayBe() {
    assertThat(error("cast_at,mold,mass_kg," + "x".repeat(1 << 20) + "\n1,2,3,4\n"))
        .isEqualTo(
            ":1: the line with the headings is longer than 1 MiB; check that this is a casting"
                + " log");
    assertThat(error("\n" + "x".repeat(5 << 20))).startsWith(":2: the line with the headings");
  }

  @Test
  void refusesHeadingsWithAQuoteThatIsNotClosed() {
    assertThat(error("cast_at,\"mold,mass_kg\n2026-03-04T05:00Z,1,388\n"))
        .startsWith(":1: a quote in the headings is not closed;");
  }

  @Test
  void namesTheFirstRowWhenNoneCanBeUsed() {
    assertThat(error("cast_at,mold,mass_kg\n\n2026-03-04T05:00Z,1,heavy\nnever,1,388\n"))
        .isEqualTo(
            ":3: no row of this log can be used, this first one because mass_kg \"heavy\" is no"
                + " number that can be used; correct that and export the log again");
  }

  @Test
  void refusesTheSameLogTwice() {
    Path log = LogText.write(folder, "june.csv", "cast_at,mold,mass_kg\n2026-03-04T05:00Z,1,388\n");
    assertThatThrownBy(() -> LogText.read("", log, folder.resolve("./june.csv")))
        .isInstanceOf(IntakeException.class)
        .hasMessageEndingWith("this log is given twice; leave one of them out");
  }

  @Test
  void warnsOfMassesWithoutAUnit() throws IntakeException {
    assertThat(
            LogText.read(
                    folder,
                    "",
                    "cast_at,mold,mass,thickness_mm,thickness_top",
                    "2026-03-04T05:00Z,1,388,43,44")
                .warnings())
        .extracting(Remark::toString)
        .containsExactly(
            "june.csv: the column \"mass\" says no unit and is taken as a setting; call it mass_kg,"
                + " or map it to that in the profile's headings",
            "june.csv: the column \"thickness_top\" ends with no unit of thickness (_mm, _cm, _in)"
                + " and is taken as a setting");
  }
}
