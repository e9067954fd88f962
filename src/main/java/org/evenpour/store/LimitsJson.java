package org.evenpour.store;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import org.evenpour.casting.FileException;
import org.evenpour.casting.Specification;
import org.evenpour.control.LimitsBook.Retirement;
import org.evenpour.control.LimitsBook.SpecificationRevision;
import org.evenpour.control.LimitsInForce;
import org.evenpour.control.LimitsInForce.SeriesLimits;
import org.evenpour.control.LimitsInForce.Wear;
import org.evenpour.control.LimitsVersion;
import org.evenpour.control.LimitsVersion.Base;
import org.evenpour.control.LimitsVersion.LeftOut;
import org.evenpour.control.LimitsVersion.MoldBase;
import org.evenpour.control.LimitsVersion.Reason;
import org.evenpour.stats.CusumPair;
import org.evenpour.stats.NormalScores;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * One line of the limits file as JSON and back. Members that are not known are passed over: a later
 * version may add some.
 */
final class LimitsJson {
  private static final String FORMAT = "evenpour.limits/1";
  private static final String APPROVED = "limits_approved";
  private static final String RETIRED = "limits_retired";
  private static final String SPECIFIED = "specification";

  private LimitsJson() {}

  static String text(LimitsVersion one) throws IOException {
    return JsonLine.text(
        FORMAT,
        APPROVED,
        out -> {
          out.writeStringField("wheel", one.wheel());
          out.writeStringField("characteristic", one.characteristic());
          out.writeStringField("unit", one.unit());
          out.writeNumberField("version", one.version());
          out.writeStringField("valid_from", one.validFrom().toString());
          out.writeStringField("approved_at", one.approvedAt().toString());
          out.writeStringField("who", one.who());
          out.writeStringField("why", one.why());
          base(out, one.base());
          leftOut(out, one.leftOut());
          limits(out, one);
        });
  }

  private static void texts(JsonGenerator out, String name, List<String> texts) throws IOException {
    out.writeArrayFieldStart(name);
    for (String text : texts) {
      out.writeString(text);
    }
    out.writeEndArray();
  }

  private static void base(JsonGenerator out, Base base) throws IOException {
    out.writeObjectFieldStart("base");
    texts(out, "logs", base.logs());
    out.writeStringField("first_cast_at", base.firstCastAt().toString());
    out.writeStringField("last_cast_at", base.lastCastAt().toString());
    out.writeNumberField("turns", base.turns());
    out.writeNumberField("anodes", base.anodes());
    out.writeEndObject();
  }

  private static void leftOut(JsonGenerator out, List<LeftOut> all) throws IOException {
    out.writeArrayFieldStart("left_out");
    for (LeftOut one : all) {
      out.writeStartObject();
      out.writeStringField("reason", one.reason().id());
      out.writeStringField("note", one.note());
      out.writeStringField("mold", one.mold());
      out.writeStringField("from", one.from().toString());
      out.writeStringField("to", one.to().toString());
      out.writeNumberField("anodes", one.anodes());
      out.writeEndObject();
    }
    out.writeEndArray();
  }

  private static void limits(JsonGenerator out, LimitsVersion one) throws IOException {
    LimitsInForce limits = one.limits();
    out.writeObjectFieldStart("limits");
    out.writeStringField("source", limits.source());
    out.writeNumberField("base_turns", limits.baseTurns());
    number(out, "center", limits.center());
    out.writeArrayFieldStart("molds");
    for (int i = 0; i < one.molds().size(); i++) {
      MoldBase mold = one.molds().get(i);
      double offset = limits.offsets()[i];
      out.writeStartObject();
      out.writeStringField("mold", mold.mold());
      out.writeStringField("serial", mold.serial());
      out.writeNumberField("casts", mold.casts());
      maybe(out, "offset", Double.isNaN(offset) ? null : (Double) offset);
      if (i < limits.wear().perTurn().size()) {
        number(out, "drift_per_turn", limits.wear().perTurn().get(i));
      }
      out.writeEndObject();
    }
    out.writeEndArray();
    series(out, "pour", limits.pour());
    number(out, "pour_limit", limits.pourLimit());
    series(out, "wheel", limits.wheel());
    number(out, "wheel_point_limit", limits.wheelPointLimit());
    number(out, "moving_range_sigma", limits.movingRangeSigma());
    texts(out, "ladle_sides", one.sides());
    out.writeArrayFieldStart("sides");
    for (SeriesLimits side : limits.sides()) {
      out.writeStartObject();
      series(out, side);
      out.writeEndObject();
    }
    out.writeEndArray();
    series(out, "spread", limits.spread());
    if (!limits.wear().perTurn().isEmpty()) {
      number(out, "drift_variance", limits.wear().variance());
    }
    if (limits.ownPast()) {
      out.writeBooleanField("own_past", true);
    }
    out.writeEndObject();
  }

  private static void series(JsonGenerator out, String name, SeriesLimits series)
      throws IOException {
    out.writeObjectFieldStart(name);
    series(out, series);
    out.writeEndObject();
  }

  private static void series(JsonGenerator out, SeriesLimits series) throws IOException {
    number(out, "center", series.center());
    number(out, "sigma", series.sigma());
    number(out, "correlation", series.correlation());
    number(out, "noise", series.noise());
    number(out, "excess", series.excess());
    number(out, "k", series.decision().k());
    number(out, "h", series.decision().h());
    number(out, "k2", series.decision().k2());
    number(out, "h2", series.decision().h2());
    if (!series.scores().isIdentity()) {
      scores(out, series.scores());
    }
  }

  private static void scores(JsonGenerator out, NormalScores scores) throws IOException {
    out.writeObjectFieldStart("normal_scores");
    out.writeNumberField("size", scores.size());
    out.writeArrayFieldStart("knots");
    for (int i = 0; i < scores.values().size(); i++) {
      out.writeStartObject();
      number(out, "value", scores.values().get(i));
      number(out, "score", scores.scores().get(i));
      out.writeEndObject();
    }
    out.writeEndArray();
    tail(out, "low", scores.low());
    tail(out, "high", scores.high());
    out.writeEndObject();
  }

  private static void tail(JsonGenerator out, String name, NormalScores.Tail tail)
      throws IOException {
    out.writeObjectFieldStart(name);
    number(out, "scale", tail.scale());
    number(out, "shape", tail.shape());
    out.writeNumberField("count", tail.count());
    out.writeEndObject();
  }

  private static void number(JsonGenerator out, String name, double value) throws IOException {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(name + " is " + value + ", which no limits may hold");
    }
    out.writeNumberField(name, value);
  }

  private static void maybe(JsonGenerator out, String name, @Nullable Double value)
      throws IOException {
    if (value == null) {
      out.writeNullField(name);
    } else {
      number(out, name, value);
    }
  }

  static String text(Retirement one) throws IOException {
    return JsonLine.text(
        FORMAT,
        RETIRED,
        out -> {
          out.writeStringField("wheel", one.wheel());
          out.writeStringField("characteristic", one.characteristic());
          out.writeNumberField("version", one.version());
          out.writeStringField("from", one.from().toString());
          out.writeStringField("retired_at", one.at().toString());
          out.writeStringField("who", one.who());
          out.writeStringField("why", one.why());
        });
  }

  static String text(SpecificationRevision one) throws IOException {
    return JsonLine.text(
        FORMAT,
        SPECIFIED,
        out -> {
          out.writeStringField("wheel", one.wheel());
          out.writeStringField("characteristic", one.characteristic());
          out.writeStringField("unit", one.unit());
          maybe(out, "lower", one.specification().lower());
          maybe(out, "target", one.specification().target());
          maybe(out, "upper", one.specification().upper());
          out.writeStringField("from", one.from().toString());
          out.writeStringField("specified_at", one.at().toString());
          out.writeStringField("who", one.who());
          out.writeStringField("why", one.why());
        });
  }

  /**
   * A {@link LimitsVersion}, a {@link Retirement} or a {@link SpecificationRevision}.
   *
   * @throws IOException if it is none, or lacks something: says what, and what mends it
   */
  static Object read(String json) throws IOException {
    JsonMembers line = JsonLine.read(json, FORMAT);
    String kind = line.text("record");
    return switch (kind) {
      case APPROVED -> version(line);
      case RETIRED ->
          new Retirement(
              line.text("wheel"),
              line.text("characteristic"),
              line.whole("version"),
              line.instant("from"),
              line.instant("retired_at"),
              line.text("who"),
              line.text("why"));
      case SPECIFIED ->
          new SpecificationRevision(
              line.textOrNull("wheel"),
              line.text("characteristic"),
              new Specification(
                  line.numberOrNull("lower"),
                  line.numberOrNull("target"),
                  line.numberOrNull("upper")),
              line.text("unit"),
              line.instant("from"),
              line.instant("specified_at"),
              line.text("who"),
              line.text("why"));
      default -> throw JsonLine.unknown(kind);
    };
  }

  private static LimitsVersion version(JsonMembers line) throws IOException {
    JsonMembers base = line.member("base");
    List<LeftOut> leftOut =
        line.each(
            "left_out",
            one ->
                new LeftOut(
                    one.oneOf("reason", Reason.values(), Reason::id),
                    one.text("note"),
                    one.textOrNull("mold"),
                    one.instant("from"),
                    one.instant("to"),
                    one.whole("anodes")));
    JsonMembers limits = line.member("limits");
    List<MoldBase> molds =
        limits.each(
            "molds", one -> new MoldBase(one.text("mold"), one.text("serial"), one.whole("casts")));
    List<Double> offsets =
        limits.each(
            "molds",
            one -> {
              Double offset = one.numberOrNull("offset");
              return offset == null ? (Double) Double.NaN : offset;
            });
    return new LimitsVersion(
        line.text("wheel"),
        line.text("characteristic"),
        line.text("unit"),
        line.whole("version"),
        line.instant("valid_from"),
        line.instant("approved_at"),
        line.text("who"),
        line.text("why"),
        new Base(
            base.texts("logs"),
            base.instant("first_cast_at"),
            base.instant("last_cast_at"),
            base.whole("turns"),
            base.whole("anodes")),
        leftOut,
        molds,
        limits.texts("ladle_sides"),
        new LimitsInForce(
            limits.text("source"),
            limits.whole("base_turns"),
            limits.number("center"),
            offsets.stream().mapToDouble(Double::doubleValue).toArray(),
            series(limits.member("pour")),
            limits.number("pour_limit"),
            series(limits.member("wheel")),
            limits.number("wheel_point_limit"),
            limits.number("moving_range_sigma"),
            limits.each("sides", LimitsJson::series),
            series(limits.member("spread")),
            wear(limits),
            limits.has("own_past") && limits.yes("own_past")));
  }

  private static Wear wear(JsonMembers limits) throws IOException {
    return limits.has("drift_variance")
        ? new Wear(
            limits.each("molds", one -> one.number("drift_per_turn")),
            limits.number("drift_variance"))
        : Wear.NONE;
  }

  private static SeriesLimits series(JsonMembers one) throws IOException {
    return new SeriesLimits(
        one.number("center"),
        one.number("sigma"),
        one.number("correlation"),
        one.number("noise"),
        one.number("excess"),
        new CusumPair(one.number("k"), one.number("h"), one.number("k2"), one.number("h2")),
        one.has("normal_scores") ? scores(one.member("normal_scores")) : NormalScores.IDENTITY);
  }

  private static NormalScores scores(JsonMembers one) throws IOException {
    List<Double> values = one.each("knots", knot -> knot.number("value"));
    List<Double> scores = one.each("knots", knot -> knot.number("score"));
    try {
      return new NormalScores(
          values, scores, tail(one.member("low")), tail(one.member("high")), one.whole("size"));
    } catch (IllegalArgumentException e) {
      throw new FileException(Remark.of("limits.number", "normal_scores"), e);
    }
  }

  private static NormalScores.Tail tail(JsonMembers one) throws IOException {
    return new NormalScores.Tail(one.number("scale"), one.number("shape"), one.whole("count"));
  }
}
