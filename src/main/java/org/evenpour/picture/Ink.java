package org.evenpour.picture;

import java.awt.Color;
import java.awt.Font;

/**
 * The colors and the type that pictures and screens are drawn in.
 *
 * <p>A calm gray field with dark text; color is spent on what departs. The accents are the
 * color-blind-safe set of M. Okabe and K. Ito (2008): blue for light or thin, vermillion for heavy
 * or thick; text in an accent is darkened or lightened until it has a contrast of 4.5 : 1 against
 * the ground (WCAG 2.2).
 *
 * @param dark whether the field is dark
 * @param ground behind everything
 * @param field behind lists, tables and pictures
 * @param text of the first rank
 * @param dim text of the second rank
 * @param hairline rules, axes, grids
 * @param data measured values without a finding
 * @param band the tolerance
 * @param heavy heavy, thick, high
 * @param heavyText the same as text
 * @param light light, thin, low
 * @param lightText the same as text
 * @param spread more scattered
 * @param spreadText the same as text
 * @param event what people did: a mold change
 * @param accent what is chosen, and the focus
 * @param chosen behind what is chosen
 * @param textPx height of body text in pixels
 */
public record Ink(
    boolean dark,
    Color ground,
    Color field,
    Color text,
    Color dim,
    Color hairline,
    Color data,
    Color band,
    Color heavy,
    Color heavyText,
    Color light,
    Color lightText,
    Color spread,
    Color spreadText,
    Color event,
    Color accent,
    Color chosen,
    float textPx) {

  /** For a bright room, and for paper. */
  public static Ink light(float textPx) {
    return new Ink(
        false,
        new Color(0xE9ECEE),
        new Color(0xF8F9FA),
        new Color(0x1F2529),
        new Color(0x565F66),
        new Color(0xC6CCD1),
        new Color(0x4A545C),
        new Color(0xE3E9EC),
        new Color(0xD55E00),
        new Color(0x9A4400),
        new Color(0x0072B2),
        new Color(0x005F94),
        new Color(0xCC79A7),
        new Color(0x93406E),
        new Color(0x6A5B2E),
        new Color(0x33506B),
        new Color(0xD6DEE5),
        textPx);
  }

  /** For a dim room. */
  public static Ink dark(float textPx) {
    return new Ink(
        true,
        new Color(0x191D20),
        new Color(0x22272B),
        new Color(0xE6EAEC),
        new Color(0xA7B1B8),
        new Color(0x434C53),
        new Color(0xB4BEC5),
        new Color(0x2D3539),
        new Color(0xE8702A),
        new Color(0xFF9A57),
        new Color(0x56B4E9),
        new Color(0x78C4EF),
        new Color(0xCC79A7),
        new Color(0xE3A1C6),
        new Color(0xCDBB7A),
        new Color(0x9CBBD6),
        new Color(0x35424D),
        textPx);
  }

  /** The same colors with another size of text. */
  public Ink sized(float px) {
    return new Ink(
        dark,
        ground,
        field,
        text,
        dim,
        hairline,
        data,
        band,
        heavy,
        heavyText,
        light,
        lightText,
        spread,
        spreadText,
        event,
        accent,
        chosen,
        px);
  }

  /** Type in so many times the size of body text. */
  public Font font(double times) {
    return new Font(Font.SANS_SERIF, Font.PLAIN, 1).deriveFont((float) (textPx * times));
  }

  /** Bold type in so many times the size of body text. */
  public Font bold(double times) {
    return font(times).deriveFont(Font.BOLD);
  }

  /** A length that follows the size of text: {@code px} at body text of 13 pixels. */
  public double length(double px) {
    return px * textPx / 13;
  }

  /** The color of a shape with this mark. */
  public Color of(Mark mark) {
    return switch (mark) {
      case HIGH -> heavy;
      case LOW -> light;
      case SPREAD -> spread;
      case NONE -> data;
    };
  }

  /** The color of text with this mark. */
  public Color textOf(Mark mark) {
    return switch (mark) {
      case HIGH -> heavyText;
      case LOW -> lightText;
      case SPREAD -> spreadText;
      case NONE -> text;
    };
  }
}
