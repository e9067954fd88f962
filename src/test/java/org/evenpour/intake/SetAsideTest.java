package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.evenpour.casting.SmallDisk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SetAsideTest {

  @TempDir Path folder;

  private List<String> files() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> String.valueOf(file.getFileName())).sorted().toList();
    }
  }

  private void read(SetAside setAside, Path... logs) throws IntakeException {
    LogReader.read(List.of(logs), Profiles.NONE, List.of(), null, null, setAside, Progress.NONE);
  }

  @Test
  void writesLineReasonAndTheRowAsItStandsInTheLog() throws IOException, IntakeException {
    Path log =
        LogText.write(
            folder,
            "june.csv",
            """
            cast_at,mold,mass_kg,note
            2026-03-04T05:00:00Z,1,388,ok
            2026-03-04T05:00:30Z,2,abc,"a ""b""
            c"
            =2+3,1,388,é
            -1,1,388,x
            """);
    try (SetAside setAside = SetAside.besideLogs()) {
      read(setAside, log);
      assertThat(files()).doesNotContain("june.csv.set-aside.csv");
      assertThat(setAside.complete()).containsExactly(folder.resolve("june.csv.set-aside.csv"));
    }
    assertThat(files()).containsExactly("june.csv", "june.csv.set-aside.csv");
    String text = Files.readString(folder.resolve("june.csv.set-aside.csv"));
    List<List<String>> rows = new ArrayList<>();
    for (CSVRecord record : CSVFormat.RFC4180.parse(new StringReader(text))) {
      rows.add(record.toList());
    }
    assertThat(rows)
        .containsExactly(
            List.of("line", "reason", "row"),
            List.of(
                "3",
                "mass_kg \"abc\" is no number that can be used",
                "2026-03-04T05:00:30Z,2,abc,\"a \"\"b\"\"\nc\""),
            List.of(
                "5",
                "cast_at \"=2+3\" is no time; write it like 2026-03-04T05:06:07+01:00",
                "'=2+3,1,388,é"),
            List.of(
                "6",
                "cast_at \"-1\" is no time; write it like 2026-03-04T05:06:07+01:00",
                "'-1,1,388,x"));
  }

  @Test
  void leavesNothingBehindWhenItIsNotCompleted() throws IOException, IntakeException {
    Path log =
        LogText.write(
            folder, "june.csv", "cast_at,mold,mass_kg\nnever,1,388\n2026-03-04T05:00:00Z,1,388\n");
    LogText.write(folder, "june.csv.set-aside.csv", "from before");
    try (SetAside setAside = SetAside.besideLogs()) {
      read(setAside, log);
      assertThat(files()).hasSize(3);
    }
    assertThat(files()).containsExactly("june.csv", "june.csv.set-aside.csv");
    assertThat(folder.resolve("june.csv.set-aside.csv")).hasContent("from before");
  }

  @Test
  void takesAwayWhatAnEarlierRunLeftWhenAllRowsAreKept() throws IOException, IntakeException {
    Path log =
        LogText.write(folder, "june.csv", "cast_at,mold,mass_kg\n2026-03-04T05:00:00Z,1,388\n");
    LogText.write(folder, "june.csv.set-aside.csv", "from before");
    try (SetAside setAside = SetAside.besideLogs()) {
      read(setAside, log);
      assertThat(setAside.complete()).isEmpty();
    }
    assertThat(files()).containsExactly("june.csv");
  }

  @Test
  void writesAFileForEachLogThoughTheirNamesAreTheSame() throws IOException, IntakeException {
    Path a = Files.createDirectory(folder.resolve("a"));
    Path b = Files.createDirectory(folder.resolve("b"));
    Path out = Files.createDirectory(folder.resolve("out"));
    Path first =
        LogText.write(
            a, "log.csv", "cast_at,mold,mass_kg\n2026-03-04T05:00:00Z,1,388\nnever,first,3\n");
    Path second =
        LogText.write(
            b, "log.csv", "cast_at,mold,mass_kg\n2026-03-05T05:00:00Z,1,388\nnever,second,3\n");
    try (SetAside setAside = SetAside.into(out)) {
      read(setAside, second, first);
      setAside.complete();
    }
    assertThat(Files.readString(out.resolve("log.csv.set-aside.csv"))).contains("first");
    assertThat(Files.readString(out.resolve("2-log.csv.set-aside.csv"))).contains("second");
  }

  @Test
  void saysThatTheFolderIsNotThere() {
    Path log =
        LogText.write(
            folder, "june.csv", "cast_at,mold,mass_kg\nnever,1,388\n2026-03-04T05:00:00Z,1,388\n");
    assertThatThrownBy(
            () -> {
              try (SetAside setAside = SetAside.into(folder.resolve("none"))) {
                read(setAside, log);
              }
            })
        .isInstanceOf(IntakeException.class)
        .hasMessage(
            folder.resolve("none/june.csv.set-aside.csv")
                + ": this file cannot be written (there is no such folder); free some space, or"
                + " choose another folder for the output");
  }

  @Test
  void saysThatTheDiskIsFullAndLeavesNothingBehind() throws IOException {
    StringBuilder text = new StringBuilder("cast_at,mold,mass_kg\n2026-03-04T05:00:00Z,1,388\n");
    for (int i = 0; i < 2000; i++) {
      text.append("never,1,388\n");
    }
    Path log = LogText.write(folder, "june.csv", text.toString());
    try (SmallDisk disk = SmallDisk.at(folder.resolve("disk"), 16)) {
      assertThatThrownBy(
              () -> {
                try (SetAside setAside = SetAside.into(disk.folder())) {
                  read(setAside, log);
                  setAside.complete();
                }
              })
          .isInstanceOf(IntakeException.class)
          .hasMessageContaining(
              "june.csv.set-aside.csv: this file cannot be written (No space left")
          .hasMessageContaining("free some space");
      assertThat(disk.folder()).isEmptyDirectory();
    }
  }
}
