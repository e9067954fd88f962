package org.evenpour.view.screen;

import javax.swing.JComponent;

/**
 * A page of the desk, for one look. A new page is one class with this interface and one line in
 * {@link Pages}.
 */
public interface Page {

  /** Its key: {@code page.KEY} is its name among the words, {@code page.KEY.tip} explains it. */
  String key();

  /** What is shown; built once. */
  JComponent screen();

  /** What can be saved from here. */
  java.util.List<Export> exports();
}
