package org.evenpour.view.screen;

import com.formdev.flatlaf.FlatClientProperties;
import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.LayoutManager;
import java.awt.RenderingHints;
import java.util.Arrays;
import java.util.regex.Pattern;
import javax.swing.AbstractButton;
import javax.swing.BorderFactory;
import javax.swing.Icon;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;
import org.evenpour.picture.Ink;
import org.evenpour.picture.Mark;
import org.evenpour.view.model.Look;
import org.jspecify.annotations.Nullable;

/** The small parts that all screens are made of; each has a name for tests and screen readers. */
final class Parts {
  /** The gap between a number and the unit behind it. */
  private static final Pattern WITHIN =
      Pattern.compile("(?<=[0-9σ]) (?=(?:%|kg|mm|lb|mL|in|σ|°[CF]|L/min|kg/s)(?:[ ,.;:)]|$))");

  private Parts() {}

  /** A line of text in one of the four sizes. */
  static JLabel label(String name, String text, Font font, java.awt.Color color) {
    JLabel label = new JLabel(text);
    label.setName(name);
    label.setFont(font);
    label.setForeground(color);
    return label;
  }

  /** Text of the first rank, large. */
  static JLabel title(String name, String text, Look look) {
    return label(name, text, look.ink().bold(1.4), look.ink().text());
  }

  /** A heading within a page. */
  static JLabel heading(String name, String text, Look look) {
    return label(name, text, look.ink().bold(1), look.ink().text());
  }

  /** Text of the second rank. */
  static JLabel dim(String name, String text, Look look) {
    return label(name, text, look.ink().font(0.92), look.ink().dim());
  }

  /** The words between which a text may be broken: a number stays with its unit. */
  static String[] words(String text) {
    return Arrays.stream(WITHIN.matcher(text).replaceAll("\u00a0").split(" ", -1))
        .map(word -> word.replace('\u00a0', ' '))
        .toArray(String[]::new);
  }

  /** Sentences that wrap. */
  static JTextArea prose(String name, String text, Font font, Look look) {
    JTextArea area =
        new JTextArea() {
          @Override
          public void setText(String said) {
            super.setText(WITHIN.matcher(said).replaceAll("\u00a0"));
          }
        };
    area.setText(text);
    area.setName(name);
    area.setEditable(false);
    area.setDropTarget(null);
    area.setFocusable(true);
    area.setLineWrap(true);
    area.setWrapStyleWord(true);
    area.setOpaque(false);
    area.setBorder(BorderFactory.createEmptyBorder());
    area.setFont(font);
    area.setForeground(look.ink().text());
    area.getAccessibleContext().setAccessibleName(text);
    return area;
  }

  static JButton button(String name, String text, String tip, Look look) {
    JButton button = new JButton(text);
    dress(button, name, tip);
    return button;
  }

  static JToggleButton toggle(String name, String text, String tip, Look look) {
    JToggleButton button = new JToggleButton(text);
    dress(button, name, tip);
    return button;
  }

  private static void dress(AbstractButton button, String name, String tip) {
    button.setName(name);
    button.getAccessibleContext().setAccessibleName(button.getText());
    if (!tip.isEmpty()) {
      button.setToolTipText(Tips.wrapped(tip));
      button.getAccessibleContext().setAccessibleDescription(tip);
    }
    // FlatLaf scales this itself: 32 pixels at body text of 13 pixels.
    button.putClientProperty(FlatClientProperties.MINIMUM_HEIGHT, 30);
  }

  /** A panel that shows its ground. */
  static JPanel panel(String name, LayoutManager layout, java.awt.Color ground) {
    JPanel panel = new JPanel(layout);
    panel.setName(name);
    panel.setBackground(ground);
    return panel;
  }

  /** What fills its place, and above it what is as high as it must be. */
  static JPanel headed(String name, JComponent head, JComponent body, Look look) {
    JPanel panel = panel(name, new BorderLayout(), look.ink().field());
    panel.add(head, BorderLayout.NORTH);
    panel.add(body, BorderLayout.CENTER);
    return panel;
  }

  /** What is longer than its place, but never wider. */
  static JScrollPane scroll(JComponent body) {
    JScrollPane scroll = new JScrollPane(body);
    scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
    scroll.setBorder(BorderFactory.createEmptyBorder());
    return scroll;
  }

  /** A line to type in, which says what belongs there while it is empty. */
  static JTextField field(String name, String label) {
    JTextField field = new JTextField();
    field.setName(name);
    field.setDropTarget(null);
    field.putClientProperty(FlatClientProperties.PLACEHOLDER_TEXT, label);
    field.getAccessibleContext().setAccessibleName(label);
    return field;
  }

  /** Says something, to readers too; nothing leaves no room empty. */
  static void say(JTextArea area, String text) {
    area.setText(text);
    area.getAccessibleContext().setAccessibleName(text);
    area.setVisible(!text.isEmpty());
  }

  /** The first that is seen and in which nothing stands; null where there is none. */
  static @Nullable JTextField blank(JTextField... fields) {
    for (JTextField field : fields) {
      if (field.isVisible() && field.getText().isBlank()) {
        return field;
      }
    }
    return null;
  }

  /** The sign of a mark, drawn. */
  static Icon icon(Mark mark, Ink ink) {
    int size = (int) Math.round(ink.length(10));
    return new Icon() {
      @Override
      public void paintIcon(Component c, Graphics g, int x, int y) {
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        if (mark != Mark.NONE) {
          g2.setColor(ink.of(mark));
          g2.fill(mark.at(x + size / 2.0, y + size / 2.0, size));
        }
        g2.dispose();
      }

      @Override
      public int getIconWidth() {
        return size;
      }

      @Override
      public int getIconHeight() {
        return size;
      }
    };
  }

  /** A list with its detail beside it; the detail takes its share only while it is visible. */
  static JPanel beside(String name, JComponent list, JComponent detail, double share, Look look) {
    return shared(name, list, detail, share, look, "", "pushy, pushx ");
  }

  /** One over the other, the upper with its share of the height. */
  static JPanel over(String name, JComponent upper, JComponent lower, double share, Look look) {
    return shared(name, upper, lower, share, look, ", wrap 1", "pushx, pushy ");
  }

  /** All room is handed out by share, none by what the parts would like. */
  private static JPanel shared(
      String name,
      JComponent first,
      JComponent second,
      double share,
      Look look,
      String flow,
      String push) {
    String gap = look.px(8) + "px ";
    String layout = "fill, hidemode 3, insets 0, novisualpadding, gap " + gap + gap + flow;
    JPanel panel = panel(name, new MigLayout(layout), look.ink().ground());
    String each = "width 0:0, height 0:0, grow, " + push;
    panel.add(first, each + Math.round(100 * share));
    panel.add(second, each + Math.round(100 * (1 - share)));
    return panel;
  }

  /** Parts in a row from the left, with room about them. */
  static JPanel row(String name, Look look, JComponent... parts) {
    int pad = look.px(8);
    JPanel panel =
        panel(
            name, new MigLayout("hidemode 3, insets " + pad + ", gap " + pad), look.ink().field());
    for (JComponent part : parts) {
      panel.add(part);
    }
    return panel;
  }
}
