package org.evenpour.view.screen;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import java.awt.Color;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import javax.swing.UIManager;
import net.miginfocom.layout.PlatformDefaults;
import net.miginfocom.layout.UnitValue;
import org.evenpour.picture.Ink;

/** Dresses Swing in an ink. */
public final class Theme {
  private Theme() {}

  /** Installs the ink for all components that are made from now on. */
  public static void install(Ink ink) {
    Map<String, String> colors = new TreeMap<>();
    colors.put("@background", hex(ink.ground()));
    colors.put("@foreground", hex(ink.text()));
    colors.put("@disabledForeground", hex(ink.dim()));
    colors.put("@componentBackground", hex(ink.field()));
    colors.put("@accentColor", hex(ink.accent()));
    colors.put("@selectionBackground", hex(ink.chosen()));
    colors.put("@selectionForeground", hex(ink.text()));
    colors.put("@selectionInactiveBackground", hex(ink.chosen()));
    colors.put("@selectionInactiveForeground", hex(ink.text()));
    FlatLaf.setGlobalExtraDefaults(colors);
    // Lengths follow the text already; the layout must not scale them again.
    PlatformDefaults.setDefaultHorizontalUnit(UnitValue.PIXEL);
    PlatformDefaults.setDefaultVerticalUnit(UnitValue.PIXEL);
    UIManager.put("defaultFont", ink.font(1));
    UIManager.put("Component.focusWidth", 1);
    UIManager.put("Component.arc", 4);
    UIManager.put("Button.arc", 4);
    UIManager.put("ScrollBar.width", Math.round(ink.length(12)));
    UIManager.put("Table.showHorizontalLines", true);
    UIManager.put("Table.showVerticalLines", false);
    UIManager.put("Table.gridColor", ink.ground());
    UIManager.put("Table.background", ink.field());
    UIManager.put("List.background", ink.field());
    UIManager.put("TableHeader.background", ink.field());
    UIManager.put("TableHeader.separatorColor", ink.field());
    UIManager.put("TableHeader.bottomSeparatorColor", ink.hairline());
    UIManager.put("ToolTip.background", ink.field());
    UIManager.put("ToolTip.foreground", ink.text());
    UIManager.put("ScrollPane.border", javax.swing.BorderFactory.createEmptyBorder());
    PlainText.install();
    boolean done = ink.dark() ? FlatDarkLaf.setup() : FlatLightLaf.setup();
    if (!done) {
      throw new IllegalStateException("the look of the window could not be installed");
    }
  }

  private static String hex(Color color) {
    return String.format(Locale.ROOT, "#%06x", color.getRGB() & 0xFFFFFF);
  }
}
