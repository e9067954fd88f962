package org.evenpour.report.json;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import org.evenpour.report.FinishedFile;
import org.evenpour.score.Score;
import org.evenpour.score.Score.Effects;
import org.evenpour.score.Score.FalseLinks;
import org.evenpour.score.Score.Faults;
import org.evenpour.score.Score.Quantiles;
import org.evenpour.score.Score.Share;

/** A score as JSON, written as {@link JsonReport} writes. */
public final class JsonScore {
  private static final String SCHEMA = "evenpour.score/1";

  private final JsonFields out;

  private JsonScore(JsonFields out) {
    this.out = out;
  }

  /**
   * Writes a score to a file, which appears only when it is whole.
   *
   * @param what was scored, in one line
   * @throws IOException if it cannot be written: says why and what would mend it
   */
  public static void write(String what, Score score, Path file) throws IOException {
    FinishedFile.write(file, stream -> write(what, score, stream));
  }

  /** Writes a score to a stream, flushes it and leaves it open. */
  public static void write(String what, Score score, OutputStream stream) throws IOException {
    JsonLines lines = new JsonLines();
    try (JsonGenerator generator = JsonReport.JSON.createGenerator(stream, JsonEncoding.UTF8)) {
      generator.setPrettyPrinter(lines);
      new JsonScore(new JsonFields(generator, lines)).score(what, score);
      generator.writeRaw('\n');
    }
    stream.flush();
  }

  private void score(String what, Score score) throws IOException {
    out.startObject();
    out.text("schema", SCHEMA);
    out.text("scored", what);
    out.number("logs", score.logs());
    out.number("signals", score.signals());
    share("signals_of_faults", score.signalsOfFaults());
    out.startObject("all");
    faults(score.all());
    out.endObject();
    out.objects("by_fault", score.byFault(), this::faults);
    out.objects("by_size", score.bySize(), this::faults);
    out.startObject("strong_links");
    share("right", score.links().right());
    share("real", score.links().real());
    falseLinks("false_beside_fault", score.links().besideFault());
    falseLinks("false_beside_no_fault", score.links().besideNothing());
    out.endObject();
    out.startObject("effects");
    effects("acting", score.acting());
    effects("idle", score.idle());
    out.endObject();
    out.endObject();
  }

  private void faults(Faults faults) throws IOException {
    out.text("name", faults.name());
    share("found", faults.found());
    quantiles("onset_error_turns", faults.onsetError());
    quantiles("delay_turns", faults.delay());
    share("top_link_right", faults.topRight());
    share("top_link_right_by_name", faults.topExact());
    share("any_top_link_right", faults.anyTopRight());
    share("unrecorded_without_strong_link", faults.noStrong());
    share("unrecorded_without_any_link", faults.noLink());
  }

  private void falseLinks(String name, FalseLinks links) throws IOException {
    out.startLine(name);
    out.number("count", links.count());
    out.number("carrying", links.carrying());
    out.number("acting", links.acting());
    out.number("idle", links.idle());
    out.number("unknown", links.unknown());
    out.endLine();
  }

  private void effects(String name, Effects effects) throws IOException {
    out.startObject(name);
    share("covered", effects.covered());
    out.number("without_interval", effects.without());
    out.number("median_relative_width", effects.relativeWidth());
    out.endObject();
  }

  private void quantiles(String name, Quantiles quantiles) throws IOException {
    out.startLine(name);
    out.number("count", quantiles.count());
    out.number("median", quantiles.median());
    out.number("ninetieth", quantiles.ninetieth());
    out.endLine();
  }

  private void share(String name, Share share) throws IOException {
    out.startLine(name);
    out.number("count", share.count());
    out.number("of", share.of());
    out.number("share", share.value());
    out.number("low", share.low());
    out.number("high", share.high());
    out.endLine();
  }
}
