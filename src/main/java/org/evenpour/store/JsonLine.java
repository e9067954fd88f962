package org.evenpour.store;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import java.io.IOException;
import java.io.StringWriter;
import org.evenpour.casting.FileException;
import org.evenpour.words.Remark;

/**
 * A line of a file as a JSON object that names its format and what it records. Every double is the
 * fewest digits that read back to the same double.
 */
final class JsonLine {
  private static final JsonFactory JSON =
      JsonFactory.builder().enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER).build();

  private JsonLine() {}

  /** Writes the members that follow. */
  @FunctionalInterface
  interface Members {
    void write(JsonGenerator out) throws IOException;
  }

  static String text(String format, String record, Members members) throws IOException {
    StringWriter text = new StringWriter();
    try (JsonGenerator out = JSON.createGenerator(text)) {
      out.writeStartObject();
      out.writeStringField("format", format);
      out.writeStringField("record", record);
      members.write(out);
      out.writeEndObject();
    }
    return text.toString();
  }

  /**
   * The members of a line.
   *
   * @throws IOException if it has another format: says what mends it
   */
  static JsonMembers read(String json, String format) throws IOException {
    JsonMembers line = JsonMembers.of(json);
    String its = line.text("format");
    if (!its.equals(format)) {
      throw new FileException(Remark.of("limits.unknown", "format", its));
    }
    return line;
  }

  /** What is thrown at a record that is not known. */
  static IOException unknown(String record) {
    return new FileException(Remark.of("limits.unknown", "record", record));
  }
}
