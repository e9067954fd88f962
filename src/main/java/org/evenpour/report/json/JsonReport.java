package org.evenpour.report.json;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.time.Instant;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.SetAsideRow;
import org.evenpour.casting.Specification;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CapabilityReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Finds;
import org.evenpour.findings.AuditReport.LimitsUsed;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.AuditReport.Monitoring;
import org.evenpour.findings.AuditReport.Overall;
import org.evenpour.findings.AuditReport.SettingReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.AuditReport.SpecificationUsed;
import org.evenpour.findings.AuditReport.TurnPoint;
import org.evenpour.findings.AuditReport.Variance;
import org.evenpour.findings.AuditReport.WheelChart;
import org.evenpour.findings.EffectInFull;
import org.evenpour.findings.NotLookedFor;
import org.evenpour.report.FinishedFile;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * An audit report as JSON, for other programs: UTF-8, every name in snake_case, every figure in the
 * unit that it was computed in.
 *
 * <p>Numbers are the fewest decimal digits that read back to the same {@code double} (Raffaello
 * Giulietti's Schubfach algorithm, as Jackson's fast writer has it; {@code Double.toString} of Java
 * 17 sometimes writes more, JDK-4511638). The same report gives the same bytes, whenever and
 * wherever it is written.
 */
public final class JsonReport {
  /** Shared by all that is written as this report is. */
  static final JsonFactory JSON =
      JsonFactory.builder()
          .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER)
          .enable(JsonWriteFeature.COMBINE_UNICODE_SURROGATES_IN_UTF8)
          .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
          .disable(StreamWriteFeature.AUTO_CLOSE_CONTENT)
          .build();

  private final JsonFields out;

  private JsonReport(JsonFields out) {
    this.out = out;
  }

  /**
   * Writes a report to a file, which appears only when it is whole.
   *
   * @throws IOException if it cannot be written: says why and what would mend it
   */
  public static void write(AuditReport report, Path file) throws IOException {
    FinishedFile.write(file, stream -> write(report, stream));
  }

  /** Writes a report to a stream, flushes it and leaves it open. */
  public static void write(AuditReport report, OutputStream stream) throws IOException {
    JsonLines lines = new JsonLines();
    try (JsonGenerator generator = JSON.createGenerator(stream, JsonEncoding.UTF8)) {
      generator.setPrettyPrinter(lines);
      new JsonReport(new JsonFields(generator, lines)).report(report);
      generator.writeRaw('\n');
    }
    stream.flush();
  }

  private void report(AuditReport report) throws IOException {
    out.startObject();
    out.text("schema", AuditReport.SCHEMA);
    log(report.log());
    out.objects("characteristics", report.characteristics(), this::characteristic);
    JsonCauses causes = new JsonCauses(out, report.causes());
    out.objects("signals", report.signals(), one -> signal(one, causes));
    out.objects("verdicts", report.verdicts(), new JsonVerdicts(out)::verdict);
    JsonMoves moves = new JsonMoves(out, report.watched());
    out.objects(
        "settings",
        report.settings(),
        one -> {
          setting(one);
          moves.watched(one);
        });
    moves.all();
    new JsonBeyond(out, report.watched().beyond()).all();
    out.objectLines("events", report.events(), this::event);
    out.objectLines("set_aside", report.setAside(), this::setAside);
    out.texts("notes", report.notes().stream().map(Remark::toString).toList());
    JsonAdvice advice = new JsonAdvice(out);
    out.objects("adjust", report.setPoints(), advice::setPoint);
    out.objects("gauge", report.gauges(), advice::gauge);
    if (!report.rejects().isEmpty()) {
      out.objects(
          "rejects", report.rejects(), new JsonRejects(out, one -> signal(one, causes))::wheel);
    }
    causes.all();
    out.endObject();
  }

  private void log(AuditReport.Log log) throws IOException {
    out.startObject("log");
    out.textsOnLine("files", log.files());
    out.number("rows_read", log.rowsRead());
    out.number("rows_kept", log.rowsKept());
    out.number("rows_set_aside", log.rowsSetAside());
    out.instant("first_cast_at", log.firstCastAt());
    out.instant("last_cast_at", log.lastCastAt());
    out.textsOnLine("wheels", log.wheels());
    out.number("molds", log.molds());
    out.number("turns", log.turns());
    out.endObject();
  }

  private void characteristic(CharacteristicReport characteristic) throws IOException {
    out.text("wheel", characteristic.wheel());
    out.text("name", characteristic.name());
    out.text("unit", characteristic.unit());
    out.text("display_unit", characteristic.displayUnit());
    Specification specification = characteristic.specification();
    out.startLine("spec");
    out.number("lower", specification.lower());
    out.number("target", specification.target());
    out.number("upper", specification.upper());
    out.endLine();
    overall(characteristic.overall());
    variance(characteristic.variance());
    new JsonVerdicts(out)
        .inFull(characteristic.inFull(), characteristic.monitoring().notLookedFor() == null);
    WheelChart chart = characteristic.wheelChart();
    if (chart == null) {
      out.nothing("wheel_chart");
    } else {
      wheelChart(chart);
    }
    monitoring(characteristic.monitoring());
    out.objectLines("spec_history", characteristic.specifications(), this::specification);
    out.objects("molds", characteristic.molds(), this::mold);
  }

  private void overall(Overall overall) throws IOException {
    out.startObject("overall");
    out.number("count", overall.count());
    out.number("mean", overall.mean());
    out.number("sd", overall.sd());
    out.number("minimum", overall.minimum());
    out.number("maximum", overall.maximum());
    if (overall.normality() == null) {
      out.nothing("normality");
    } else {
      out.startLine("normality");
      out.number("anderson_darling", overall.normality().andersonDarling());
      out.number("p_value", overall.normality().pValue());
      out.endLine();
    }
    capability(overall.capability());
    out.endObject();
  }

  private void variance(Variance variance) throws IOException {
    out.startObject("variance");
    out.number("mold", variance.mold());
    out.number("turn", variance.turn());
    out.number("pour", variance.pour());
    out.number("mold_f", variance.moldF());
    out.number("mold_f_df1", variance.moldFDf1());
    out.number("mold_f_df2", variance.moldFDf2());
    out.number("mold_f_p", variance.moldFP());
    out.endObject();
  }

  private void wheelChart(WheelChart chart) throws IOException {
    out.startObject("wheel_chart");
    out.number("center", chart.center());
    out.number("lower_limit", chart.lowerLimit());
    out.number("upper_limit", chart.upperLimit());
    out.number("sigma", chart.sigma());
    out.counts("tests", chart.tests());
    out.number("autocorrelation", chart.autocorrelation());
    out.objectLines("points", chart.points(), this::point);
    out.endObject();
  }

  private void point(TurnPoint point) throws IOException {
    out.number("turn", point.turn());
    out.instant("at", point.at());
    out.number("value", point.value());
    out.number("anodes", point.anodes());
    out.yes("start_up", point.startUp());
  }

  private void monitoring(Monitoring monitoring) throws IOException {
    out.startObject("monitoring");
    out.text("source", monitoring.source());
    out.number("base_turns", monitoring.baseTurns());
    out.number("pour_sigma", monitoring.pourSigma());
    out.number("turn_sigma", monitoring.turnSigma());
    out.number("shift_limit", monitoring.shiftLimit());
    out.number("pour_limit", monitoring.pourLimit());
    out.number("false_alarms_per_shift", monitoring.falseAlarmsPerShift());
    Finds finds = monitoring.finds();
    if (finds != null) {
      out.startObject("finds");
      out.number("shift", finds.shift());
      out.number("mold_turns", finds.moldTurns());
      out.number("wheel_turns", finds.wheelTurns());
      out.endObject();
    }
    out.objectLines("used", monitoring.used(), this::used);
    notLookedFor(monitoring.notLookedFor());
    out.endObject();
  }

  private void used(LimitsUsed used) throws IOException {
    out.text("source", used.source());
    out.number("version", used.version());
    instant("approved_at", used.approvedAt());
    out.text("who", used.who());
    out.text("why", used.why());
    instant("valid_from", used.validFrom());
    out.number("first_turn", used.firstTurn());
    out.number("last_turn", used.lastTurn());
    out.number("turns", used.turns());
    out.instant("first_cast_at", used.firstCastAt());
    out.instant("last_cast_at", used.lastCastAt());
    out.number("base_turns", used.baseTurns());
    out.number("center", used.center());
    out.number("pour_sigma", used.pourSigma());
    out.number("turn_sigma", used.turnSigma());
    notLookedFor(used.notLookedFor());
  }

  /** Why no signals were looked for; nothing where they were. */
  private void notLookedFor(@Nullable NotLookedFor why) throws IOException {
    if (why != null) {
      out.text("not_looked_for", why.reason().id());
    }
  }

  private void specification(SpecificationUsed used) throws IOException {
    instant("from", used.from());
    out.number("lower", used.specification().lower());
    out.number("target", used.specification().target());
    out.number("upper", used.specification().upper());
    out.text("who", used.who());
    out.text("why", used.why());
    out.number("anodes", used.anodes());
  }

  private void instant(String name, @Nullable Instant at) throws IOException {
    if (at == null) {
      out.nothing(name);
    } else {
      out.instant(name, at);
    }
  }

  private void mold(MoldReport mold) throws IOException {
    out.text("mold", mold.mold());
    out.number("count", mold.count());
    out.number("mean", mold.mean());
    out.number("sd", mold.sd());
    out.number("sigma_within", mold.sigmaWithin());
    out.number("center", mold.center());
    out.number("lower_limit", mold.lowerLimit());
    out.number("upper_limit", mold.upperLimit());
    out.counts("tests", mold.tests());
    out.number("offset", mold.offset());
    out.number("offset_low", mold.offsetLow());
    out.number("offset_high", mold.offsetHigh());
    out.number("outside", mold.outside());
    capability(mold.capability());
  }

  private void capability(@Nullable CapabilityReport capability) throws IOException {
    if (capability == null) {
      out.nothing("capability");
      return;
    }
    out.startObject("capability");
    out.estimate("cp", capability.cp());
    out.estimate("cpk", capability.cpk());
    out.estimate("cpl", capability.cpl());
    out.estimate("cpu", capability.cpu());
    out.estimate("pp", capability.pp());
    out.estimate("ppk", capability.ppk());
    out.estimate("cpm", capability.cpm());
    out.number("fraction_outside_expected", capability.fractionOutsideExpected());
    out.number("fraction_outside_observed", capability.fractionOutsideObserved());
    out.endObject();
  }

  private void signal(Signal signal, JsonCauses causes) throws IOException {
    out.text("id", signal.id());
    out.text("wheel", signal.wheel());
    out.text("characteristic", signal.characteristic());
    out.text("scope", JsonFields.name(signal.scope()));
    out.text("mold", signal.mold());
    out.text("side", signal.side());
    out.number("first_turn", signal.firstTurn());
    out.number("last_turn", signal.lastTurn());
    out.instant("first_cast_at", signal.firstCastAt());
    out.instant("last_cast_at", signal.lastCastAt());
    out.number("since_turn", signal.sinceTurn());
    out.instant("since_at", signal.sinceAt());
    out.yes("open", signal.open());
    out.textsOnLine("tests", signal.tests());
    out.text("direction", JsonFields.name(signal.direction()));
    out.number("size", signal.size());
    out.number("size_low", signal.sizeLow());
    out.number("size_high", signal.sizeHigh());
    out.number("size_sigma", signal.sizeSigma());
    if (signal.otherSide() != null) {
      out.number("other_side", signal.otherSide());
    }
    out.objects(
        "links",
        signal.links(),
        link -> {
          link(link);
          causes.link(signal, link);
        });
    causes.besideLinks(signal);
  }

  private void link(Link link) throws IOException {
    out.text(link.event() ? "event" : "setting", link.name());
    out.text("group", link.group());
    out.text("unit", link.unit());
    out.text("evidence", JsonFields.name(link.evidence()));
    out.number("moved_by", link.movedBy());
    out.number("expected_effect", link.expectedEffect());
    out.number("explained_share", link.explainedShare());
    out.number("explained_low", link.explainedLow());
    out.number("explained_high", link.explainedHigh());
    out.number("q_value", link.qValue());
    out.number("since_turn", link.sinceTurn());
    out.text("look_first", link.lookFirst());
    out.textsOnLine("together_with", link.togetherWith());
  }

  private void setting(SettingReport setting) throws IOException {
    out.text("wheel", setting.wheel());
    out.text("name", setting.name());
    out.text("unit", setting.unit());
    out.text("group", setting.group());
    out.number("lag_turns", setting.lagTurns());
    out.yes("category", setting.category());
    out.number("count", setting.count());
    out.number("missing", setting.missing());
    out.number("mean", setting.mean());
    out.number("sd", setting.sd());
    out.number("minimum", setting.minimum());
    out.number("maximum", setting.maximum());
    out.number("levels", setting.levels());
    out.objectLines("effects", setting.effects(), this::effect);
  }

  private void effect(AuditReport.Effect effect) throws IOException {
    out.text("characteristic", effect.characteristic());
    out.number("per_unit", effect.perUnit());
    out.number("low", effect.low());
    out.number("high", effect.high());
    EffectInFull inFull = effect.inFull();
    out.text("known", JsonFields.name(inFull.known()));
    AuditReport.Estimate share = inFull.share();
    out.number("variance_share", share == null ? null : (Double) share.value());
    out.number("variance_share_low", share == null ? null : share.low());
    out.number("variance_share_high", share == null ? null : share.high());
    if (!inFull.togetherWith().isEmpty()) {
      out.textsOnLine("together_with", inFull.togetherWith());
    }
    EffectInFull.Window window = inFull.window();
    if (window != null) {
      out.number("window_low", window.isBorneOut() ? window.low() : null);
      out.number("window_high", window.isBorneOut() ? window.high() : null);
      EffectInFull.Held held = window.held();
      if (held != null) {
        out.number("tried_low", window.low());
        out.number("tried_high", window.high());
        out.number("anodes_inside", held.inside());
        out.number("outside_tolerance_inside", held.insideOut());
        out.number("outside_tolerance_inside_molds", held.molds());
        out.number("anodes_beyond", held.beyond());
        out.number("outside_tolerance_beyond", held.beyondOut());
      }
    }
    EffectInFull.Line line = inFull.line();
    if (line != null) {
      out.number("curvature_p", line.curvature());
      out.number("residual_lag_one", line.lagOne());
    }
    EffectInFull.Trial trial = inFull.trial();
    if (trial != null) {
      out.number("trial_low", trial.low());
      out.number("trial_high", trial.high());
      out.number("trial_hold_turns", trial.holdTurns());
      out.number("trial_turns", trial.turns());
      out.number("trial_difference", trial.difference());
      out.number("trial_power", trial.power());
    }
    EffectInFull.Levels levels = inFull.levels();
    if (levels != null) {
      out.number("p_value", levels.p());
      out.objects("levels", levels.each(), this::level);
    }
  }

  private void level(EffectInFull.Level level) throws IOException {
    out.text("level", level.name());
    out.number("effect", level.effect());
    out.number("low", level.low());
    out.number("high", level.high());
    out.number("visits", level.visits());
    out.number("turns", level.turns());
    out.yes("compared", level.compared());
  }

  private void event(CastingEvent event) throws IOException {
    out.instant("at", event.at());
    out.text("wheel", event.wheel());
    out.text("mold", event.mold());
    out.text("event", event.kind());
    out.text("note", event.note());
  }

  private void setAside(SetAsideRow row) throws IOException {
    out.text("log", row.log());
    out.number("line", row.line());
    out.text("reason", row.reason().toString());
    out.text("text", row.text());
  }
}
