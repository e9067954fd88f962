package org.evenpour.report.json;

import java.io.IOException;
import org.evenpour.findings.CapabilityInFull;
import org.evenpour.findings.CapabilityInFull.ByPercentiles;
import org.evenpour.findings.CapabilityInFull.Group;
import org.evenpour.findings.CapabilityInFull.Part;
import org.evenpour.findings.CapabilityInFull.WhatIf;
import org.evenpour.findings.MoldVerdict;
import org.evenpour.findings.MoldVerdict.Standing;
import org.evenpour.findings.MoldVerdict.ThickSide;
import org.evenpour.findings.MoldVerdict.Trend;

/**
 * The JSON of molds' verdicts and of what stands beside capability.
 *
 * @param out where it is written
 */
record JsonVerdicts(JsonFields out) {

  void verdict(MoldVerdict verdict) throws IOException {
    out.text("wheel", verdict.wheel());
    out.text("mold", verdict.mold());
    out.text("mold_serial", verdict.serial());
    out.text("verdict", verdict.verdict() == null ? null : JsonFields.name(verdict.verdict()));
    out.text("reason", JsonFields.name(verdict.reason()));
    out.text("characteristic", verdict.characteristic());
    out.text("signal", verdict.signal());
    if (verdict.setting() != null) {
      out.text("setting", verdict.setting());
    }
    out.number("casts", verdict.casts());
    out.yes("is_new", verdict.isNew());
    out.number("casts_on_mold", verdict.castsOnMold());
    out.number("tonnes", verdict.tonnes());
    ThickSide side = verdict.thickSide();
    if (side == null) {
      out.nothing("thick_side");
    } else {
      out.startLine("thick_side");
      out.text("side", side.side());
      out.number("to_right_mm", side.toRight());
      out.number("to_top_mm", side.toTop());
      out.number("error_mm", side.error());
      out.endLine();
    }
    out.objects("standings", verdict.standings(), this::standing);
  }

  private void standing(Standing one) throws IOException {
    out.text("characteristic", one.characteristic());
    out.number("casts", one.casts());
    out.number("effective_casts", one.effectiveCasts());
    out.number("level", one.level());
    out.number("offset", one.offset());
    out.number("offset_low", one.offsetLow());
    out.number("offset_high", one.offsetHigh());
    out.number("shrunk", one.shrunk());
    out.number("shrunk_low", one.shrunkLow());
    out.number("shrunk_high", one.shrunkHigh());
    out.number("decision_limit", one.decisionLimit());
    out.yes("stands_out", one.standsOut());
    out.number("sd", one.sd());
    out.estimate("ppk", one.room());
    out.estimate("step", one.step());
    Trend trend = one.trend();
    if (trend == null) {
      out.nothing("trend");
    } else {
      out.startLine("trend");
      out.number("per_100_casts", trend.per100());
      out.number("low", trend.low());
      out.number("high", trend.high());
      out.yes("is_clear", trend.isClear());
      out.number("casts_left", trend.castsLeft());
      out.number("casts_left_low", trend.castsLeftLow());
      out.number("casts_left_high", trend.castsLeftHigh());
      out.endLine();
    }
  }

  /**
   * @param isLookedFor whether signals were looked for: else nobody knows whether it is stable
   */
  void inFull(CapabilityInFull full, boolean isLookedFor) throws IOException {
    if (isLookedFor) {
      out.yes("stable", full.isStable());
    } else {
      out.nothing("stable");
    }
    if (full.isNormal() == null) {
      out.nothing("normal");
    } else {
      out.yes("normal", full.isNormal());
    }
    ByPercentiles percentiles = full.percentiles();
    if (percentiles == null) {
      out.nothing("percentiles");
    } else {
      out.startObject("percentiles");
      out.number("low", percentiles.low());
      out.number("median", percentiles.median());
      out.number("high", percentiles.high());
      out.estimate("pp", percentiles.pp());
      out.estimate("ppk", percentiles.ppk());
      out.endObject();
    }
    out.objectLines("spread", full.parts(), this::part);
    out.objectLines("what_if", full.whatIfs(), this::whatIf);
    out.objects("groups", full.groups(), this::group);
  }

  private void part(Part part) throws IOException {
    out.text("source", JsonFields.name(part.source()));
    out.number("variance", part.variance());
    out.number("sd", part.sd());
    out.number("share", part.share());
  }

  private void whatIf(WhatIf one) throws IOException {
    out.text("without", JsonFields.name(one.without()));
    out.number("mean", one.mean());
    out.number("sd", one.sd());
    out.number("ppk", one.ppk());
    out.number("ppk_now", one.ppkNow());
    out.number("fraction_outside_expected", one.fractionOutside());
  }

  private void group(Group group) throws IOException {
    out.text("by", group.by());
    out.text("name", group.name());
    out.number("count", group.count());
    out.number("mean", group.mean());
    out.number("sd", group.sd());
    out.estimate("cpk", group.cpk());
    out.estimate("ppk", group.ppk());
    out.number("outside", group.outside());
    out.yes("few", group.isFew());
  }
}
