package org.evenpour.view.screen;

/** Texts under the pointer. */
final class Tips {
  private static final int LINE = 60;

  private Tips() {}

  /** A text broken into lines of a readable length; nothing in it is read as markup. */
  static String wrapped(String text) {
    if (text.length() <= LINE) {
      return text.startsWith("<html") ? " " + text : text;
    }
    StringBuilder html = new StringBuilder("<html>");
    int column = 0;
    for (String word : text.split(" ", -1)) {
      if (column > 0 && column + word.length() > LINE) {
        html.append("<br>");
        column = 0;
      }
      html.append(column == 0 ? "" : " ").append(escaped(word));
      column += word.length() + 1;
    }
    return html.append("</html>").toString();
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
