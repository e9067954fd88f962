package org.evenpour.report.json;

import java.io.IOException;
import org.evenpour.findings.AuditReport.SettingReport;
import org.evenpour.findings.SettingsWatched;
import org.evenpour.findings.SettingsWatched.Gap;
import org.evenpour.findings.SettingsWatched.Move;
import org.evenpour.findings.SettingsWatched.Watched;

/** Where the recorded settings themselves moved, as JSON. */
final class JsonMoves {
  private final JsonFields out;
  private final SettingsWatched report;

  JsonMoves(JsonFields out, SettingsWatched report) {
    this.out = out;
    this.report = report;
  }

  /** What of a setting is watched, and why the rest is not; nothing of a category. */
  void watched(SettingReport setting) throws IOException {
    Watched its = report.of(setting.wheel(), setting.name());
    if (its != null) {
      out.textsOnLine("watched", its.scopes().stream().map(JsonFields::name).toList());
      out.objectLines("not_watched", its.gaps(), this::gap);
      out.number("watched_from_turn", its.fromTurn());
    }
  }

  private void gap(Gap gap) throws IOException {
    out.text("scope", gap.scope() == null ? null : JsonFields.name(gap.scope()));
    out.text("reason", JsonFields.name(gap.reason()));
  }

  void all() throws IOException {
    out.objects("setting_moves", report.moves(), this::move);
  }

  private void move(Move move) throws IOException {
    out.text("wheel", move.wheel());
    out.text("setting", move.setting());
    out.text("group", move.group());
    out.text("unit", move.unit());
    out.text("scope", JsonFields.name(move.scope()));
    out.textsOnLine("molds", move.molds());
    out.text("side", move.side());
    out.text("direction", JsonFields.name(move.direction()));
    out.number("first_turn", move.firstTurn());
    out.number("last_turn", move.lastTurn());
    out.number("since_turn", move.sinceTurn());
    out.instant("since_at", move.sinceAt());
    out.instant("last_cast_at", move.lastCastAt());
    out.yes("open", move.open());
    out.number("moved_by", move.movedBy());
    out.number("moved_by_least", move.least());
    out.number("moved_by_most", move.most());
    out.number("size_sigma", move.sizeSigma());
    out.textsOnLine("signals", move.signals());
    out.text("look_first", move.lookFirst());
  }
}
