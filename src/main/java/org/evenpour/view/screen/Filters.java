package org.evenpour.view.screen;

import com.formdev.flatlaf.FlatClientProperties;
import java.awt.Dimension;
import javax.swing.JTextField;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import org.evenpour.view.model.Look;

/** Fields that filter a table while one types. */
final class Filters {
  private Filters() {}

  static JTextField field(String name, Look look, Runnable changed) {
    JTextField field = new JTextField(14);
    field.setName(name);
    field.setToolTipText(look.say("filter.tip"));
    field.getAccessibleContext().setAccessibleName(look.say("filter"));
    field.putClientProperty(FlatClientProperties.PLACEHOLDER_TEXT, look.say("filter"));
    field.putClientProperty(FlatClientProperties.TEXT_FIELD_SHOW_CLEAR_BUTTON, true);
    field.setPreferredSize(new Dimension(field.getPreferredSize().width, look.px(32)));
    field
        .getDocument()
        .addDocumentListener(
            new DocumentListener() {
              @Override
              public void insertUpdate(DocumentEvent event) {
                changed.run();
              }

              @Override
              public void removeUpdate(DocumentEvent event) {
                changed.run();
              }

              @Override
              public void changedUpdate(DocumentEvent event) {
                changed.run();
              }
            });
    return field;
  }
}
