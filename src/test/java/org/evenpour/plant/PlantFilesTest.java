package org.evenpour.plant;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlantFilesTest {
  @TempDir Path folder;

  /** What is saved from the window never takes the place of what it shows. */
  @Test
  void noneOfTheFilesThatAreShownMayBeWrittenOver() throws IOException {
    Path log = Files.writeString(folder.resolve("june.csv"), "");
    Path profile = Files.writeString(folder.resolve("wheel.yaml"), "");
    Path events = Files.writeString(folder.resolve("events.csv"), "");
    KeptFiles kept = new PlantFiles(List.of(log), profile, events).notToBeLost();
    Path link = Files.createSymbolicLink(folder.resolve("link.csv"), log);
    for (Path one :
        List.of(
            log,
            profile,
            events,
            link,
            folder.resolve("wheel.yaml.limits.jsonl"),
            folder.resolve("wheel.yaml.causes.jsonl"),
            folder.resolve("june.csv.seen.csv"))) {
      assertThatThrownBy(() -> kept.mayWrite(one))
          .isInstanceOf(IOException.class)
          .hasMessageContaining("would be lost");
    }
    assertThatCode(() -> kept.mayWrite(folder.resolve("rows.csv"))).doesNotThrowAnyException();
    assertThatCode(() -> PlantFiles.NONE.notToBeLost().mayWrite(log)).doesNotThrowAnyException();
  }
}
