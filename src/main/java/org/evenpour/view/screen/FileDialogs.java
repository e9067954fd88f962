package org.evenpour.view.screen;

import java.awt.Component;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import javax.swing.JFileChooser;
import javax.swing.JOptionPane;
import javax.swing.SwingUtilities;
import org.evenpour.view.model.Look;
import org.jspecify.annotations.Nullable;

/** Asks in dialogs, and before a file is replaced. Remembers the folder. */
final class FileDialogs implements FileAsk {
  private final Component parent;
  private final java.util.function.Supplier<Look> look;
  private @Nullable File folder;

  FileDialogs(Component parent, java.util.function.Supplier<Look> look) {
    this.parent = parent;
    this.look = look;
  }

  @Override
  public List<Path> open() {
    JFileChooser chooser = new JFileChooser(folder);
    chooser.setMultiSelectionEnabled(true);
    if (chooser.showOpenDialog(window()) != JFileChooser.APPROVE_OPTION) {
      return List.of();
    }
    folder = chooser.getCurrentDirectory();
    return Arrays.stream(chooser.getSelectedFiles()).map(File::toPath).toList();
  }

  @Override
  public @Nullable Path save(String proposedName) {
    JFileChooser chooser = new JFileChooser(folder);
    chooser.setSelectedFile(new File(chooser.getCurrentDirectory(), proposedName));
    if (chooser.showSaveDialog(window()) != JFileChooser.APPROVE_OPTION) {
      return null;
    }
    folder = chooser.getCurrentDirectory();
    Path file = chooser.getSelectedFile().toPath();
    return Files.exists(file) && !mayReplace(file) ? null : file;
  }

  private boolean mayReplace(Path file) {
    Look now = look.get();
    String keep = now.say("export.replace.no");
    Object[] answers = {now.say("export.replace.yes"), keep};
    int answer =
        JOptionPane.showOptionDialog(
            window(),
            now.say("export.replace", file.getFileName()),
            now.say("window.title"),
            JOptionPane.DEFAULT_OPTION,
            JOptionPane.QUESTION_MESSAGE,
            null,
            answers,
            keep);
    return answer == 0;
  }

  private @Nullable Component window() {
    return SwingUtilities.getWindowAncestor(parent);
  }
}
