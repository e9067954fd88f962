package org.evenpour.intake;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.words.Remark;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.Node;

/**
 * Reads a YAML file that people write. It is taken as its tree of nodes, each of which knows its
 * line, and never bound to objects: so every error has a place, and no text of the file can name a
 * class.
 */
final class YamlFile {
  private static final int SIZE_LIMIT = 1 << 20;

  private YamlFile() {}

  /**
   * The documents in a text.
   *
   * @param file as the user named it
   * @param itself what people call such a file
   * @throws IntakeException with the line and what mends it
   */
  static List<YamlPart> documents(String file, String text, Remark itself) throws IntakeException {
    LoaderOptions options = new LoaderOptions();
    options.setProcessComments(false);
    List<YamlPart> documents = new ArrayList<>();
    try {
      for (Node document :
          new Yaml(new SafeConstructor(options)).composeAll(new StringReader(text))) {
        documents.add(new YamlPart(file, itself, document));
      }
    } catch (MarkedYAMLException e) {
      throw notYaml(file, e);
    } catch (YAMLException e) {
      throw IntakeException.ofFile(file, "profile.text", String.valueOf(e.getMessage()));
    }
    return documents;
  }

  /** What stands in a file. */
  static String text(Path file, Remark itself) throws IntakeException {
    if (Files.isDirectory(file)) {
      throw IntakeException.ofFile(file.toString(), "profile.folder", itself);
    }
    try {
      if (Files.size(file) > SIZE_LIMIT) {
        throw IntakeException.ofFile(file.toString(), "profile.large", itself);
      }
      byte[] bytes = Files.readAllBytes(file);
      int from = bytes.length >= 3 && bytes[0] == (byte) 0xEF && bytes[1] == (byte) 0xBB ? 3 : 0;
      if (!CellText.isUtf8(bytes, from, bytes.length)) {
        throw IntakeException.ofFile(file.toString(), "profile.utf8");
      }
      return new String(bytes, from, bytes.length - from, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw IntakeException.unreadable(file, e);
    }
  }

  private static IntakeException notYaml(String file, MarkedYAMLException e) {
    long line = e.getProblemMark() == null ? 0 : e.getProblemMark().getLine() + 1L;
    int column = e.getProblemMark() == null ? 0 : e.getProblemMark().getColumn() + 1;
    String problem = String.valueOf(e.getProblem());
    String key =
        problem.contains("\\t")
            ? "profile.tabs"
            : problem.contains("tag ") ? "profile.tag" : "profile.yaml";
    return new IntakeException(file, line, column, key, problem);
  }
}
