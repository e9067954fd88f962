package org.evenpour.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.evenpour.casting.FileException;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * The members of a JSON object, each of the kind that is wanted; what is missing or of another kind
 * is an error that says what and how to mend it.
 */
final class JsonMembers {
  private static final ObjectMapper READER = new ObjectMapper();

  private final JsonNode node;

  private JsonMembers(JsonNode node) {
    this.node = node;
  }

  static JsonMembers of(String json) throws IOException {
    try {
      return new JsonMembers(READER.readTree(json));
    } catch (JsonProcessingException e) {
      throw new FileException(Remark.of("limits.json"), e);
    }
  }

  /** Makes something of an object. */
  @FunctionalInterface
  interface Reading<T> {
    T of(JsonMembers one) throws IOException;
  }

  private JsonNode get(String name) throws IOException {
    JsonNode its = node.get(name);
    if (its == null) {
      throw new FileException(Remark.of("limits.member", name));
    }
    return its;
  }

  private static IOException wrong(String name, String kind) {
    return new FileException(Remark.of("limits." + kind, name));
  }

  /** Whether it has a member: earlier versions lack some. */
  boolean has(String name) {
    return node.has(name);
  }

  JsonMembers member(String name) throws IOException {
    return new JsonMembers(get(name));
  }

  <T> List<T> each(String name, Reading<T> reading) throws IOException {
    List<T> all = new ArrayList<>();
    for (JsonNode one : get(name)) {
      all.add(reading.of(new JsonMembers(one)));
    }
    return all;
  }

  List<String> texts(String name) throws IOException {
    List<String> all = new ArrayList<>();
    for (JsonNode one : get(name)) {
      all.add(one.asText());
    }
    return all;
  }

  String text(String name) throws IOException {
    JsonNode its = get(name);
    if (!its.isTextual()) {
      throw wrong(name, "text");
    }
    return its.textValue();
  }

  @Nullable String textOrNull(String name) throws IOException {
    return get(name).isNull() ? null : text(name);
  }

  <E> E oneOf(String name, E[] all, Function<E, String> id) throws IOException {
    String text = text(name);
    for (E one : all) {
      if (id.apply(one).equals(text)) {
        return one;
      }
    }
    throw new FileException(Remark.of("limits.unknown", name, text));
  }

  Instant instant(String name) throws IOException {
    try {
      return Instant.parse(text(name));
    } catch (DateTimeException e) {
      throw new FileException(Remark.of("limits.time", name), e);
    }
  }

  int whole(String name) throws IOException {
    JsonNode its = get(name);
    if (!its.isIntegralNumber() || !its.canConvertToInt()) {
      throw wrong(name, "whole");
    }
    return its.intValue();
  }

  boolean yes(String name) throws IOException {
    JsonNode its = get(name);
    if (!its.isBoolean()) {
      throw wrong(name, "yes");
    }
    return its.booleanValue();
  }

  double number(String name) throws IOException {
    JsonNode its = get(name);
    if (!its.isNumber()) {
      throw wrong(name, "number");
    }
    return its.doubleValue();
  }

  @Nullable Double numberOrNull(String name) throws IOException {
    return get(name).isNull() ? null : (Double) number(name);
  }
}
