package org.evenpour.intake;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.evenpour.casting.PlantAdvice;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/** Reads what a plant itself says of what to look at first. */
public final class AdviceReader {
  private static final Remark ITSELF = Remark.of("advice.itself");
  private static final List<String> KEYS = List.of("look", "caution", "wets_mold");
  private static final List<String> LANGUAGES = List.of("en", "es");

  /** A choice: more would push what else the summary and the board have to say from the page. */
  private static final int TEXT_LIMIT = 200;

  private static final int ENTRIES_LIMIT = 1000;

  private AdviceReader() {}

  /**
   * Reads a file of advice.
   *
   * @throws IntakeException with the line and what mends it
   */
  public static PlantAdvice read(Path file) throws IntakeException {
    Map<String, PlantAdvice.Entry> entries = new LinkedHashMap<>();
    for (YamlPart document :
        YamlFile.documents(file.toString(), YamlFile.text(file, ITSELF), ITSELF)) {
      if (document.isEmpty()) {
        continue;
      }
      for (Map.Entry<String, YamlPart> one : document.map(null).entrySet()) {
        Map<String, YamlPart> keys = one.getValue().map(KEYS);
        YamlPart wets = keys.get("wets_mold");
        PlantAdvice.Entry entry =
            new PlantAdvice.Entry(
                texts(keys.get("look")),
                texts(keys.get("caution")),
                wets == null ? null : wets.yesOrNo());
        if (entries.put(one.getKey(), entry) != null) {
          throw one.getValue().error("profile.twice", CellText.shown(one.getKey()));
        }
        if (entries.size() > ENTRIES_LIMIT) {
          throw one.getValue().error("advice.many", ENTRIES_LIMIT);
        }
      }
    }
    return new PlantAdvice(entries);
  }

  private static Map<String, String> texts(@Nullable YamlPart part) throws IntakeException {
    Map<String, String> texts = new LinkedHashMap<>();
    if (part != null) {
      for (Map.Entry<String, YamlPart> one : part.map(LANGUAGES).entrySet()) {
        String text = one.getValue().text().replaceAll("\\s+", " ");
        if (text.length() > TEXT_LIMIT) {
          throw one.getValue().error("advice.long", text.length(), TEXT_LIMIT);
        }
        texts.put(one.getKey(), text);
      }
    }
    return texts;
  }
}
