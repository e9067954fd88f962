package org.evenpour.link;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Properties;

/** What to look at first, from an editable table of texts by setting, event or group. */
public final class Advice {
  private static final String TABLE = "/org/evenpour/shared/advice.properties";

  private final Properties texts;

  private Advice(Properties texts) {
    this.texts = texts;
  }

  /** The table that comes with the program. */
  public static Advice standard() {
    Properties texts = new Properties();
    try (InputStream in = Advice.class.getResourceAsStream(TABLE)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its table " + TABLE);
      }
      texts.load(new InputStreamReader(in, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException("the table " + TABLE + " could not be read", e);
    }
    return new Advice(texts);
  }

  /**
   * The text for a setting or an event, the safety line included where water or wash is concerned;
   * empty where the table has none.
   *
   * @param name the setting's column or the event's kind
   * @param group the setting's group; empty for an event
   */
  public String of(String name, String group) {
    for (String key : new String[] {name, group}) {
      String text = key.isEmpty() ? null : texts.getProperty(key);
      if (text != null) {
        boolean safety = "yes".equals(texts.getProperty(key + ".safety"));
        return safety ? text + ". " + texts.getProperty("safety", "") : text;
      }
    }
    return "";
  }
}
