package org.evenpour.view.screen;

import com.formdev.flatlaf.ui.FlatButtonUI;
import com.formdev.flatlaf.ui.FlatCheckBoxMenuItemUI;
import com.formdev.flatlaf.ui.FlatCheckBoxUI;
import com.formdev.flatlaf.ui.FlatLabelUI;
import com.formdev.flatlaf.ui.FlatMenuItemUI;
import com.formdev.flatlaf.ui.FlatMenuUI;
import com.formdev.flatlaf.ui.FlatRadioButtonMenuItemUI;
import com.formdev.flatlaf.ui.FlatRadioButtonUI;
import com.formdev.flatlaf.ui.FlatToggleButtonUI;
import com.formdev.flatlaf.ui.FlatToolTipUI;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.UIManager;
import javax.swing.plaf.ComponentUI;

/**
 * Makes Swing show text as it stands. By itself it takes any text that begins with {@code <html>}
 * for a page: a mold that is labelled so would be drawn as one, and its pictures fetched from the
 * network. Labels, buttons, menus and tips learn otherwise when they are made, and with them
 * everything that lists, tables and dialogs draw, for that is labels.
 */
public final class PlainText {
  private static final List<String> KINDS =
      List.of(
          "LabelUI",
          "ButtonUI",
          "ToggleButtonUI",
          "CheckBoxUI",
          "RadioButtonUI",
          "MenuUI",
          "MenuItemUI",
          "CheckBoxMenuItemUI",
          "RadioButtonMenuItemUI",
          "ToolTipUI");

  private PlainText() {}

  /** For all components that are made from now on. */
  static void install() {
    for (String kind : KINDS) {
      UIManager.put(kind, PlainText.class.getName());
    }
  }

  /** As Swing asks for what draws a component. */
  public static ComponentUI createUI(JComponent component) {
    component.putClientProperty("html.disable", Boolean.TRUE);
    return switch (component.getUIClassID()) {
      case "LabelUI" -> FlatLabelUI.createUI(component);
      case "ButtonUI" -> FlatButtonUI.createUI(component);
      case "ToggleButtonUI" -> FlatToggleButtonUI.createUI(component);
      case "CheckBoxUI" -> FlatCheckBoxUI.createUI(component);
      case "RadioButtonUI" -> FlatRadioButtonUI.createUI(component);
      case "MenuUI" -> FlatMenuUI.createUI(component);
      case "MenuItemUI" -> FlatMenuItemUI.createUI(component);
      case "CheckBoxMenuItemUI" -> FlatCheckBoxMenuItemUI.createUI(component);
      case "RadioButtonMenuItemUI" -> FlatRadioButtonMenuItemUI.createUI(component);
      case "ToolTipUI" -> FlatToolTipUI.createUI(component);
      default -> throw new IllegalArgumentException(component.getUIClassID());
    };
  }
}
