package org.evenpour.report.json;

import java.io.IOException;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.RejectReport;

/**
 * What was rejected, as JSON.
 *
 * @param out where it is written
 * @param signal writes the members of a spell's signal
 */
record JsonRejects(JsonFields out, JsonFields.Members<Signal> signal) {

  void wheel(RejectReport its) throws IOException {
    out.text("wheel", its.wheel());
    share("all", its.all());
    out.number("tonnes", its.tonnes());
    out.objectLines("classes", its.classes(), this::ofClass);
    out.objects("molds", its.molds(), this::mold);
    out.objects("groups", its.groups(), this::group);
    out.number("dispersion", its.dispersion());
    out.objectLines("charges", its.charges(), this::charge);
    out.objects("spells", its.spells(), this::spell);
  }

  private void charge(RejectReport.OfCharge its) throws IOException {
    out.text("charge", its.name());
    out.instant("first_cast_at", its.firstCastAt());
    out.number("rejected", its.rejected());
    out.number("of", its.of());
    out.number("value", its.value());
    out.number("upper", its.upper());
  }

  private void spell(RejectReport.Spell its) throws IOException {
    out.text("defect", its.defect());
    out.number("rejected", its.rejected());
    out.number("of", its.of());
    out.number("usual", its.usual());
    out.startObject("signal");
    signal.write(its.signal());
    out.endObject();
  }

  private void share(String name, RejectReport.Share its) throws IOException {
    out.startLine(name);
    out.number("rejected", its.rejected());
    out.number("of", its.of());
    out.number("value", its.value());
    out.number("low", its.low());
    out.number("high", its.high());
    out.endLine();
  }

  private void ofClass(RejectReport.OfClass its) throws IOException {
    out.text("defect", its.name());
    out.number("rejected", its.rejected());
    out.number("share", its.share());
    out.number("together", its.together());
    out.number("tonnes", its.tonnes());
    out.text("most_in", its.mostIn());
  }

  private void mold(RejectReport.OfMold its) throws IOException {
    out.text("mold", its.mold());
    share("share", its.share());
    out.number("shrunk", its.shrunk());
    out.yes("stands_out", its.standsOut());
    out.text("most", its.most());
  }

  private void group(RejectReport.OfGroup its) throws IOException {
    out.text("by", its.by());
    out.text("name", its.name());
    share("share", its.share());
  }
}
