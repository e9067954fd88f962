package org.evenpour.report.json;

import java.io.IOException;
import org.evenpour.findings.GaugeReport;
import org.evenpour.findings.SetPointReport;
import org.evenpour.findings.SetPointReport.Replay;
import org.jspecify.annotations.Nullable;

/**
 * The members {@code adjust} and {@code gauge} of the JSON report.
 *
 * @param out where they are written
 */
record JsonAdvice(JsonFields out) {

  void setPoint(SetPointReport its) throws IOException {
    out.text("wheel", its.wheel());
    out.text("side", its.side());
    out.text("unit", "kg");
    out.number("aim", its.aim());
    out.number("set_point", its.setPoint());
    out.number("moves_taken_out", its.movesTakenOut());
    out.number("turns", its.turns());
    out.number("lambda", its.lambda());
    out.number("lambda_low", its.lambdaLow());
    out.number("lambda_high", its.lambdaHigh());
    out.number("sigma", its.sigma());
    out.number("forecast", its.forecast());
    out.number("forecast_low", its.forecastLow());
    out.number("forecast_high", its.forecastHigh());
    out.number("deadband", its.deadband());
    out.number("move_costs", its.moveCosts());
    out.text("answer", JsonFields.name(its.answer()));
    out.number("move_by", its.moveBy());
    out.number("turns_between_moves", its.turnsBetweenMoves());
    out.text("look_first", its.lookFirst());
    replay("left_alone", its.leftAlone());
    replay("with_deadband", its.withDeadband());
    replay("compensated", its.compensated());
    SetPointReport.Ordinary ordinary = its.ordinary();
    if (ordinary != null) {
      out.startObject("without_signals");
      out.number("turns", ordinary.turns());
      out.textsOnLine("signals", ordinary.signals());
      replay("left_alone", ordinary.leftAlone());
      replay("with_deadband", ordinary.withDeadband());
      replay("compensated", ordinary.compensated());
      out.endObject();
    }
    out.objectLines("points", its.points(), this::point);
  }

  private void replay(String name, @Nullable Replay replay) throws IOException {
    if (replay == null) {
      out.nothing(name);
      return;
    }
    out.startLine(name);
    out.number("rms", replay.rms());
    out.number("mean", replay.mean());
    out.number("sd", replay.sd());
    out.number("moves", replay.moves());
    out.endLine();
  }

  private void point(SetPointReport.Point point) throws IOException {
    out.number("turn", point.turn());
    out.instant("at", point.at());
    out.number("deviation", point.deviation());
    out.number("forecast", point.forecast());
    out.number("with_deadband", point.withDeadband());
    out.number("compensated", point.compensated());
  }

  void gauge(GaugeReport its) throws IOException {
    out.text("file", its.file());
    out.text("characteristic", its.characteristic());
    out.text("unit", its.unit());
    out.number("parts", its.parts());
    out.number("operators", its.operators());
    out.number("readings", its.readings());
    out.estimate("sigma", its.sigma());
    out.estimate("repeatability", its.repeatability());
    out.number("reproducibility", its.reproducibility());
    out.estimate("between_operators", its.betweenOperators());
    out.estimate("interaction", its.interaction());
    out.estimate("part_to_part", its.partToPart());
    out.number("interaction_p", its.interactionP());
    out.number("share_of_study", its.shareOfStudy());
    out.estimate("bias", its.bias());
    out.number("bias_p", its.biasP());
    out.estimate("drift_per_day", its.driftPerDay());
    out.number("drift_p", its.driftP());
    out.objects("wheels", its.wheels(), this::wheel);
  }

  private void wheel(GaugeReport.OnWheel its) throws IOException {
    out.text("wheel", its.wheel());
    out.number("share_of_spread", its.shareOfSpread());
    out.number("share_of_pour", its.shareOfPour());
    out.number("share_of_tolerance", its.shareOfTolerance());
    out.number("accept_low", its.acceptLow());
    out.number("accept_high", its.acceptHigh());
    out.number("reject_below", its.rejectBelow());
    out.number("reject_above", its.rejectAbove());
    out.number("in_doubt", its.inDoubt());
    out.yes("leaves_room", its.leavesRoom());
    out.textsOnLine("too_coarse_for", its.tooCoarseFor().stream().map(JsonFields::name).toList());
  }
}
