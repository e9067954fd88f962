package org.evenpour.view.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.evenpour.findings.MoldVerdict.Verdict;
import org.evenpour.plant.PlantFiles;
import org.evenpour.report.Summary;
import org.evenpour.report.Topic;
import org.evenpour.view.model.InShort.Row;
import org.evenpour.words.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class InShortTest {
  private static List<Row> of(InShort told, String section) {
    return told.rows().stream().filter(row -> row.section().equals(section)).toList();
  }

  @Test
  void whatHoldsStandsFirstInTheOrderOfTheSummary() {
    Desk desk = Sample.desk();
    InShort told = InShort.of(desk);
    List<Topic> holding =
        Topic.of(desk.report()).stream().filter(topic -> topic.first().open()).toList();
    assertThat(holding).isNotEmpty();
    assertThat(told.rows().subList(0, holding.size()))
        .extracting(row -> Objects.requireNonNull(row.opens().signal()).id())
        .containsExactlyElementsOf(holding.stream().map(topic -> topic.largest().id()).toList());
    // What the console says of molds, rejects and the biggest lever is said here in the same words.
    String summary = flat(Summary.text(desk.report(), desk.log().zone()));
    List<Row> same = new ArrayList<>(of(told, "short.capability").subList(0, 1));
    same.add(of(told, "short.rejects").get(0));
    same.add(of(told, "short.molds").get(of(told, "short.molds").size() - 1));
    same.forEach(row -> assertThat(summary).contains(flat(row.sentence())));
  }

  private static String flat(String text) {
    return text.replaceAll("\\s+", " ");
  }

  @Test
  void eachSentenceOpensWhatSpeaksForIt() {
    Desk desk = Sample.desk();
    for (Row row : InShort.of(desk).rows()) {
      row.opens().choose(desk);
      if (row.opens().signal() != null) {
        assertThat(desk.selection().signal())
            .isEqualTo(Objects.requireNonNull(row.opens().signal()).id());
      }
      if (row.opens().mold() != null) {
        assertThat(desk.selection().mold()).isEqualTo(row.opens().mold());
        assertThat(row.sentence()).contains(Objects.requireNonNull(row.opens().mold()));
      }
    }
  }

  /** The job of issue and guide: which molds out or leveled. None is forgotten, none invented. */
  @Test
  void everyMoldToActOnIsThereAndTheCautionStandsBefore() {
    Desk desk = Sample.desk();
    List<Row> molds = of(InShort.of(desk), "short.molds");
    List<String> told =
        molds.stream().map(row -> row.opens().mold()).filter(Objects::nonNull).toList();
    assertThat(told)
        .containsExactlyInAnyOrderElementsOf(
            desk.report().verdicts().stream()
                .filter(one -> one.verdict() != null && one.verdict() != Verdict.KEEP)
                .map(one -> one.mold())
                .toList());
    assertThat(molds)
        .allSatisfy(
            row -> assertThat(row.caution()).startsWith("Check first that the mold is dry"));
  }

  @Test
  void whatWasSetAsideIsCountedAndOpened(@TempDir Path folder) throws Exception {
    List<String> lines = Files.readAllLines(Sample.SOURCES.logs().get(0)).subList(0, 500);
    Path log = folder.resolve("log.csv");
    Files.writeString(log, String.join("\n", lines) + "\nyesterday,T1\n");
    OpenedLog opened = Sample.read(new PlantFiles(List.of(log), Sample.SOURCES.profile(), null));
    Selection selection = new Selection();
    opened.fit(selection);
    Look look = Look.of(false, Language.of("en"), DisplayUnits.METRIC, 720);
    InShort told = InShort.of(new Desk(opened, selection, look));
    assertThat(told.setAside()).isEqualTo(1);
    Row aside = of(told, "short.before").get(0);
    assertThat(aside.sentence()).isEqualTo("One of 500 rows was set aside and not used (0.2 %).");
    assertThat(aside.opens()).isEqualTo(Evidence.part("record", "aside"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"en", "es"})
  void theSheetNamesEachMoldToActOnAfterTheCaution(String tag) {
    Desk desk = Sample.desk(Look.of(false, Language.of(tag), DisplayUnits.METRIC, 720));
    var sheet = MoldSheet.of(desk);
    Words words = desk.look().language().report();
    assertThat(sheet.caution()).startsWith(words.say("dry"));
    long work =
        desk.report().verdicts().stream()
            .filter(one -> one.verdict() == Verdict.LEVEL || one.verdict() == Verdict.REPLACE)
            .count();
    assertThat(work).isPositive();
    assertThat(sheet.items().stream().limit(work + 1).skip(1))
        .allSatisfy(
            item -> {
              assertThat(item.isWork()).isTrue();
              assertThat(item.why()).isNotBlank();
            });
  }
}
