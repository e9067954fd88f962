package org.evenpour.report.json;

import java.io.IOException;
import org.evenpour.findings.BeyondSettings;
import org.evenpour.findings.BeyondSettings.Departure;
import org.evenpour.findings.BeyondSettings.Taken;
import org.evenpour.findings.BeyondSettings.View;

/** The wheel with the settings' effects taken off, as JSON. */
final class JsonBeyond {
  private final JsonFields out;
  private final BeyondSettings report;

  JsonBeyond(JsonFields out, BeyondSettings report) {
    this.out = out;
    this.report = report;
  }

  void all() throws IOException {
    out.objects("beyond_settings", report.views(), this::view);
  }

  private void view(View view) throws IOException {
    out.text("wheel", view.wheel());
    out.text("characteristic", view.characteristic());
    out.objectLines("settings", view.settings(), this::taken);
    out.number("from_turn", view.fromTurn());
    out.number("base_turns", view.baseTurns());
    out.number("sigma", view.sigma());
    out.number("autocorrelation", view.correlation());
    out.number("clearer", view.clearer());
    out.objects("departures", view.departures(), this::departure);
  }

  private void taken(Taken taken) throws IOException {
    out.text("setting", taken.setting());
    out.number("per_unit", taken.perUnit());
    out.number("error", taken.error());
    out.number("mean", taken.mean());
  }

  private void departure(Departure one) throws IOException {
    out.text("direction", JsonFields.name(one.direction()));
    out.number("first_turn", one.firstTurn());
    out.number("last_turn", one.lastTurn());
    out.number("since_turn", one.sinceTurn());
    out.instant("since_at", one.sinceAt());
    out.instant("last_cast_at", one.lastCastAt());
    out.yes("open", one.open());
    out.number("size", one.size());
    out.number("size_low", one.sizeLow());
    out.number("size_high", one.sizeHigh());
    out.number("size_sigma", one.sizeSigma());
    out.textsOnLine("signals", one.signals());
    out.yes("alone", one.alone());
    out.text("told_with", one.toldWith());
  }
}
