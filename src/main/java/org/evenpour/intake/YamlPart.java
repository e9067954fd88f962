package org.evenpour.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.DumperOptions.ScalarStyle;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;

/**
 * A part of a YAML file that knows its name and its place.
 *
 * @param file as the user named it
 * @param name of the key under which it stands
 * @param node the part itself
 */
record YamlPart(String file, Remark name, Node node) {
  private static final Pattern NUMBER =
      Pattern.compile("[-+]?([0-9]+(\\.[0-9]*)?|\\.[0-9]+)([eE][-+]?[0-9]+)?");

  /** Whether there is nothing in it. */
  boolean isEmpty() {
    return node.getTag().equals(Tag.NULL);
  }

  /**
   * Its keys and what they hold.
   *
   * @param known the only keys that may be there; null = any
   */
  Map<String, YamlPart> map(@Nullable List<String> known) throws IntakeException {
    if (!(node instanceof MappingNode mapping)) {
      throw wrong("map");
    }
    Map<String, YamlPart> parts = new LinkedHashMap<>();
    for (NodeTuple tuple : mapping.getValue()) {
      String key = new YamlPart(file, Remark.of("profile.a.key"), tuple.getKeyNode()).text();
      YamlPart part = new YamlPart(file, Remark.verbatim(key), tuple.getValueNode());
      YamlPart place = new YamlPart(file, Remark.verbatim(key), tuple.getKeyNode());
      if (known != null && !known.contains(key)) {
        throw place.error(
            "profile.key",
            CellText.shown(key),
            name,
            CellText.nearest(key, known)
                .map(nearest -> Remark.of("profile.meant", nearest))
                .orElse(Remark.of("profile.keys", String.join(", ", known))));
      }
      if (parts.put(key, part) != null) {
        throw place.error("profile.twice", CellText.shown(key));
      }
    }
    return parts;
  }

  /** Its elements. */
  List<YamlPart> list() throws IntakeException {
    if (!(node instanceof SequenceNode sequence)) {
      throw wrong("list");
    }
    List<YamlPart> parts = new ArrayList<>();
    for (Node element : sequence.getValue()) {
      parts.add(new YamlPart(file, name, element));
    }
    return parts;
  }

  /** Its text, as written: a wheel called 02 or no is called so. */
  String text() throws IntakeException {
    if (!(node instanceof ScalarNode scalar) || isEmpty() || scalar.getValue().isBlank()) {
      throw wrong("text");
    }
    return scalar.getValue().strip();
  }

  /** Whether it says yes; {@code true} and {@code false} are taken too. */
  boolean yesOrNo() throws IntakeException {
    return switch (text().toLowerCase(Locale.ROOT)) {
      case "yes", "true" -> true;
      case "no", "false" -> false;
      default -> throw wrong("yes");
    };
  }

  /** Its number. */
  double number() throws IntakeException {
    if (!(node instanceof ScalarNode scalar)
        || scalar.getScalarStyle() != ScalarStyle.PLAIN
        || !NUMBER.matcher(scalar.getValue()).matches()) {
      throw wrong("number");
    }
    double value = Double.parseDouble(scalar.getValue());
    if (Double.isInfinite(value)) {
      throw wrong("number");
    }
    if (Math.abs(value) > DecimalReader.LARGEST) {
      throw error("profile.number.large", name, shown());
    }
    return value;
  }

  /** Its whole number. */
  int wholeNumber(int lowest, int highest) throws IntakeException {
    double value = number();
    if (value != Math.rint(value) || value < lowest || value > highest) {
      throw wrong("whole", lowest, highest);
    }
    return (int) value;
  }

  /** How it stands in the file. */
  Remark shown() {
    if (isEmpty()) {
      return Remark.of("profile.empty");
    }
    if (node instanceof ScalarNode scalar) {
      return Remark.verbatim(CellText.shown(scalar.getValue()));
    }
    return Remark.of(node instanceof SequenceNode ? "profile.list" : "profile.map");
  }

  private IntakeException wrong(String wanted, Object... values) {
    Remark want = Remark.of("profile.want." + wanted, values);
    return isEmpty()
        ? error("profile.wrong.empty", name, want)
        : error("profile.wrong", name, shown(), want);
  }

  /** What is wrong at this place. */
  IntakeException error(String key, Object... values) {
    return new IntakeException(
        file, node.getStartMark().getLine() + 1L, node.getStartMark().getColumn() + 1, key, values);
  }
}
