package org.evenpour.report.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.PrettyPrinter;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Lays JSON out for people: one member a line, small things whole on theirs; the line break is a
 * line feed on every system.
 *
 * <p>Owned by the thread that writes the report.
 */
final class JsonLines implements PrettyPrinter {
  private final List<String> indents = new ArrayList<>();
  private int depth;
  private boolean onOneLine;

  /** From now on everything goes on the line where it begins, or each member on its own again. */
  void onOneLine(boolean yes) {
    onOneLine = yes;
  }

  private void separate(JsonGenerator out) throws IOException {
    if (onOneLine) {
      out.writeRaw(' ');
    } else {
      newLine(out);
    }
  }

  private void newLine(JsonGenerator out) throws IOException {
    while (indents.size() <= depth) {
      indents.add("\n" + "  ".repeat(indents.size()));
    }
    out.writeRaw(indents.get(depth));
  }

  @Override
  public void writeRootValueSeparator(JsonGenerator out) throws IOException {
    out.writeRaw('\n');
  }

  @Override
  public void writeStartObject(JsonGenerator out) throws IOException {
    out.writeRaw('{');
    depth++;
  }

  @Override
  public void writeEndObject(JsonGenerator out, int members) throws IOException {
    depth--;
    if (members > 0 && !onOneLine) {
      newLine(out);
    }
    out.writeRaw('}');
  }

  @Override
  public void writeObjectEntrySeparator(JsonGenerator out) throws IOException {
    out.writeRaw(',');
    separate(out);
  }

  @Override
  public void writeObjectFieldValueSeparator(JsonGenerator out) throws IOException {
    out.writeRaw(": ");
  }

  @Override
  public void beforeObjectEntries(JsonGenerator out) throws IOException {
    if (!onOneLine) {
      newLine(out);
    }
  }

  @Override
  public void writeStartArray(JsonGenerator out) throws IOException {
    out.writeRaw('[');
    depth++;
  }

  @Override
  public void writeEndArray(JsonGenerator out, int values) throws IOException {
    depth--;
    if (values > 0 && !onOneLine) {
      newLine(out);
    }
    out.writeRaw(']');
  }

  @Override
  public void writeArrayValueSeparator(JsonGenerator out) throws IOException {
    out.writeRaw(',');
    separate(out);
  }

  @Override
  public void beforeArrayValues(JsonGenerator out) throws IOException {
    if (!onOneLine) {
      newLine(out);
    }
  }
}
