package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.evenpour.findings.BeyondSettings.Departure;
import org.evenpour.findings.SettingsWatched.Move;
import org.evenpour.picture.Mark;
import org.evenpour.report.BeyondSentences;
import org.evenpour.report.SettingSentences;

/**
 * Where the chosen wheel stands off beyond what its settings explain, and its settings that moved
 * though no anode shows it; those that still hold first.
 *
 * @param rows one for each departure and move
 */
public record SettingMovesView(List<Row> rows) {

  /** Copies the list. */
  public SettingMovesView {
    rows = List.copyOf(rows);
  }

  /**
   * A departure or a move.
   *
   * @param mark which way it went
   * @param sentence what moved, where and since when
   * @param advice what to look at first; empty where there is nothing to say
   * @param isOpen whether it still holds
   */
  public record Row(Mark mark, String sentence, String advice, boolean isOpen) {}

  /**
   * Those that are to be seen.
   *
   * @param wanted words that the sentence must hold; empty = any
   * @param onlyOpen whether those that have passed are left out
   */
  public static SettingMovesView of(Desk desk, String wanted, boolean onlyOpen) {
    SettingSentences sentences = new SettingSentences(desk.sentences());
    String words = wanted.strip().toLowerCase(Locale.ROOT);
    List<Row> rows = new ArrayList<>();
    BeyondSentences beyond = new BeyondSentences(desk.report(), desk.sentences());
    for (Departure one : beyond.all()) {
      String said = beyond.sentence(one);
      boolean isHere = one.wheel().equals(desk.selection().wheel());
      boolean fits = words.isEmpty() || said.toLowerCase(Locale.ROOT).contains(words);
      if (isHere && fits && (one.open() || !onlyOpen)) {
        rows.add(new Row(one.size() > 0 ? Mark.HIGH : Mark.LOW, said, "", one.open()));
      }
    }
    for (Move move : SettingSentences.all(desk.report())) {
      String said = sentences.lead(move);
      boolean isHere = move.wheel().equals(desk.selection().wheel());
      boolean fits = words.isEmpty() || said.toLowerCase(Locale.ROOT).contains(words);
      if (isHere && fits && (move.open() || !onlyOpen)) {
        rows.add(
            new Row(
                move.movedBy() > 0 ? Mark.HIGH : Mark.LOW,
                said,
                sentences.advice(move),
                move.open()));
      }
    }
    return new SettingMovesView(rows);
  }
}
