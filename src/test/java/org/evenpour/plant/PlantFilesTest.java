package org.evenpour.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.evenpour.casting.PlantAdvice;
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

  @Test
  void adviceStandsBesideTheProfileAndIsNoProfile(@TempDir Path folder) throws Exception {
    Path log = Files.writeString(folder.resolve("log.csv"), "");
    Path profile = Files.writeString(folder.resolve("n2.yaml"), "molds: 26\n");
    Path advice = Files.writeString(folder.resolve("n2.yaml.advice.yaml"), "wash: {}\n");
    PlantFiles files = new PlantFiles(List.of(log), profile, null);
    assertThat(files.adviceFile()).isEqualTo(advice);
    assertThat(files.advice().entries()).containsOnlyKeys("wash");
    assertThat(files.with(List.of(advice))).isEqualTo(files);
    assertThatThrownBy(() -> files.notToBeLost().mayWrite(advice))
        .hasMessageContaining("the file of advice");
    assertThat(new PlantFiles(List.of(log), null, null).advice()).isEqualTo(PlantAdvice.NONE);
    assertThat(PlantFiles.NONE.advice()).isEqualTo(PlantAdvice.NONE);
  }
}
