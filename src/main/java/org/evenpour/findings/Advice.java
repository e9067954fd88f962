package org.evenpour.findings;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;
import org.evenpour.casting.PlantAdvice;
import org.evenpour.casting.Unit;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * What to look at first, and what keeps people safe meanwhile: a table that comes with the program,
 * by setting, event or group, and the plant's own merged over it. A plant's text takes the place of
 * the program's in its language; of cautions nothing can be taken away.
 *
 * @param own what the plant says
 * @param wetsMold what profiles say of settings: whether they may leave a mold wet
 */
public record Advice(PlantAdvice own, Map<String, Boolean> wetsMold) {
  private static final String TABLE = "/org/evenpour/shared/advice.properties";
  private static final String ENGLISH = "en";
  private static final Properties SHIPPED = shipped();

  /** Copies the map. */
  public Advice {
    wetsMold = Map.copyOf(wetsMold);
  }

  /** What comes with the program. */
  public static Advice standard() {
    return new Advice(PlantAdvice.NONE, Map.of());
  }

  private static Properties shipped() {
    Properties texts = new Properties();
    try (InputStream in = Advice.class.getResourceAsStream(TABLE)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its table " + TABLE);
      }
      texts.load(new InputStreamReader(in, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException("the table " + TABLE + " could not be read", e);
    }
    return texts;
  }

  /**
   * The English text for a setting or an event, its cautions before it; empty where nothing is said
   * and nothing is to be feared. What a plant wrote in another language only is told in that.
   *
   * @param name the setting's column or the event's kind
   * @param group the setting's group; empty for an event
   */
  public String of(String name, String group) {
    String text = "";
    for (String key : keys(name, group)) {
      String its = look(key, ENGLISH);
      its = its == null ? SHIPPED.getProperty(key) : its;
      if (its != null) {
        text = its;
        break;
      }
    }
    for (String key : keys(name, group)) {
      PlantAdvice.Entry entry = own.entries().get(key);
      text = text.isEmpty() && entry != null ? any(entry.look()) : text;
    }
    List<String> said = new ArrayList<>();
    if (wetsMold(name, group)) {
      said.add(SHIPPED.getProperty("caution", ""));
    }
    if (isMoldWork(name, group)) {
      said.add(SHIPPED.getProperty("caution.work", ""));
    }
    said.addAll(cautions(name, group, ENGLISH));
    return before(said, text);
  }

  /**
   * A sentence, or the beginning of one, with cautions before it; what follows a caution is whole.
   */
  public static String before(List<String> cautions, String sentence) {
    String rest = without(cautions, sentence);
    if (cautions.isEmpty()) {
      return rest;
    }
    String all = String.join(" ", new LinkedHashSet<>(cautions));
    return rest.isEmpty() ? all : all + " " + stop(Words.capital(rest));
  }

  /**
   * What stands after the program's English cautions, to be told with those of another language.
   */
  public static String uncautioned(String english) {
    return without(
        List.of(SHIPPED.getProperty("caution", ""), SHIPPED.getProperty("caution.work", "")),
        english);
  }

  /** A sentence without the cautions that lead it already. */
  private static String without(List<String> cautions, String sentence) {
    String rest = sentence.strip();
    boolean isLed = true;
    while (isLed) {
      isLed = false;
      for (String caution : cautions) {
        if (!caution.isEmpty() && rest.startsWith(caution)) {
          rest = rest.substring(caution.length()).strip();
          isLed = true;
        }
      }
    }
    return rest;
  }

  /**
   * Whether an event or a setting leads people to a mold itself, which is hot and heavy: to one
   * that was changed, leveled or dressed. No plant takes that away.
   */
  public boolean isMoldWork(String name, String group) {
    return keys(name, group).stream()
        .anyMatch(key -> "yes".equals(SHIPPED.getProperty(key + ".mold_work")));
  }

  /** What the plant says of a setting, an event or a group in a language; null where nothing. */
  public @Nullable String look(String key, String language) {
    PlantAdvice.Entry entry = own.entries().get(key);
    return entry == null ? null : entry.look().get(language);
  }

  /**
   * The plant's own cautions, in whole sentences: in this language, or where it gave none in
   * another.
   */
  public List<String> cautions(String name, String group, String language) {
    List<String> all = new ArrayList<>();
    for (String key : keys(name, group)) {
      PlantAdvice.Entry entry = own.entries().get(key);
      if (entry != null && !entry.caution().isEmpty()) {
        String said = entry.caution().get(language);
        all.add(stop(said == null ? any(entry.caution()) : said));
      }
    }
    return all;
  }

  /**
   * Whether a setting or an event leads people to where a mold may be wet: to wash, water, spray or
   * a mold's temperature. One yes is enough, whoever says it: this program's table, the plant's or
   * a profile, of the setting or of its group. Where nobody says anything it is yes: what is not
   * known is taken to be wet.
   */
  public boolean wetsMold(String name, String group) {
    boolean isKnown = false;
    List<String> keys = new ArrayList<>(keys(name, group));
    String suffix = Unit.ofColumn(name).suffix();
    if (!suffix.isEmpty()) {
      keys.add(name.substring(0, name.length() - suffix.length() - 1));
    }
    for (String key : keys) {
      PlantAdvice.Entry entry = own.entries().get(key);
      Boolean plants = entry == null ? null : entry.wetsMold();
      String programs = SHIPPED.getProperty(key + ".wets_mold");
      if ("yes".equals(programs) || Boolean.TRUE.equals(plants)) {
        return true;
      }
      isKnown |= programs != null || plants != null;
    }
    Boolean said = wetsMold.get(name);
    return said == null ? !isKnown : said;
  }

  private static List<String> keys(String name, String group) {
    return group.isEmpty() ? List.of(name) : List.of(name, group);
  }

  private static String any(Map<String, String> byLanguage) {
    return new TreeMap<>(byLanguage).values().stream().findFirst().orElse("");
  }

  /** A sentence with its stop. */
  public static String stop(String sentence) {
    return sentence.endsWith(".") || sentence.endsWith("!") ? sentence : sentence + ".";
  }
}
