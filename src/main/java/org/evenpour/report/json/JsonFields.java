package org.evenpour.report.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.report.RunTests;
import org.evenpour.report.WellFormed;
import org.jspecify.annotations.Nullable;

/**
 * Named members of JSON objects, one call each; what is null is written as null.
 *
 * <p>Owned by the thread that writes the report.
 */
final class JsonFields {
  private final JsonGenerator out;
  private final JsonLines lines;
  private final IsoTimes times = new IsoTimes();

  JsonFields(JsonGenerator out, JsonLines lines) {
    this.out = out;
    this.lines = lines;
  }

  /** Writes the members of one object. */
  @FunctionalInterface
  interface Members<T> {
    void write(T value) throws IOException;
  }

  void startObject() throws IOException {
    out.writeStartObject();
  }

  void startObject(String name) throws IOException {
    out.writeFieldName(name);
    out.writeStartObject();
  }

  void endObject() throws IOException {
    out.writeEndObject();
  }

  /** An object that stands whole on its member's line. */
  void startLine(String name) throws IOException {
    out.writeFieldName(name);
    lines.onOneLine(true);
    out.writeStartObject();
  }

  void endLine() throws IOException {
    out.writeEndObject();
    lines.onOneLine(false);
  }

  /** A value with its interval, on one line. */
  void estimate(String name, @Nullable Estimate estimate) throws IOException {
    if (estimate == null) {
      nothing(name);
      return;
    }
    startLine(name);
    number("value", estimate.value());
    number("low", estimate.low());
    number("high", estimate.high());
    endLine();
  }

  /** What a constant is called in the report. */
  static String name(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }

  void nothing(String name) throws IOException {
    out.writeNullField(name);
  }

  void text(String name, @Nullable String value) throws IOException {
    if (value == null) {
      nothing(name);
    } else {
      out.writeStringField(name, WellFormed.text(value));
    }
  }

  void instant(String name, Instant value) throws IOException {
    out.writeStringField(name, times.text(value));
  }

  void yes(String name, boolean value) throws IOException {
    out.writeBooleanField(name, value);
  }

  void number(String name, long value) throws IOException {
    out.writeNumberField(name, value);
  }

  void number(String name, double value) throws IOException {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(
          name + " is " + value + ", which no report may hold: what is undefined is null");
    }
    out.writeNumberField(name, value);
  }

  void number(String name, @Nullable Double value) throws IOException {
    if (value == null) {
      nothing(name);
    } else {
      number(name, value.doubleValue());
    }
  }

  void number(String name, @Nullable Long value) throws IOException {
    if (value == null) {
      nothing(name);
    } else {
      number(name, value.longValue());
    }
  }

  void number(String name, @Nullable Integer value) throws IOException {
    if (value == null) {
      nothing(name);
    } else {
      number(name, value.longValue());
    }
  }

  /** Counts on one line, run tests in their standard order. */
  void counts(String name, Map<String, Long> counts) throws IOException {
    startLine(name);
    for (String id : counts.keySet().stream().sorted(RunTests.ORDER).toList()) {
      Long count = counts.get(id);
      number(WellFormed.text(id), count);
    }
    endLine();
  }

  /** Texts, each on its line. */
  void texts(String name, List<String> values) throws IOException {
    out.writeArrayFieldStart(name);
    for (String value : values) {
      out.writeString(WellFormed.text(value));
    }
    out.writeEndArray();
  }

  /** Texts, all on one line. */
  void textsOnLine(String name, List<String> values) throws IOException {
    out.writeFieldName(name);
    lines.onOneLine(true);
    out.writeStartArray();
    for (String value : values) {
      out.writeString(WellFormed.text(value));
    }
    out.writeEndArray();
    lines.onOneLine(false);
  }

  /** Objects, each member on its line. */
  <T> void objects(String name, List<T> values, Members<T> members) throws IOException {
    out.writeArrayFieldStart(name);
    for (T value : values) {
      out.writeStartObject();
      members.write(value);
      out.writeEndObject();
    }
    out.writeEndArray();
  }

  /** Objects, each whole on its line. */
  <T> void objectLines(String name, List<T> values, Members<T> members) throws IOException {
    out.writeArrayFieldStart(name);
    for (T value : values) {
      out.writeStartObject();
      lines.onOneLine(true);
      members.write(value);
      out.writeEndObject();
      lines.onOneLine(false);
    }
    out.writeEndArray();
  }
}
