package org.evenpour.view.screen;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.function.Supplier;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JMenuItem;
import javax.swing.JPopupMenu;
import javax.swing.SwingWorker;
import org.evenpour.view.model.Desk;
import org.jspecify.annotations.Nullable;

/** Saves what is seen on a page: pictures, tables, the workbook; says where, or why not. */
final class SaveButton {
  private final Desk desk;
  private final FileAsk ask;
  private final JButton button;
  private final JLabel said;
  private @Nullable Saving saving;
  private final Supplier<Page> page;

  SaveButton(Desk desk, FileAsk ask, Supplier<Page> page) {
    this.desk = desk;
    this.ask = ask;
    this.page = page;
    var look = desk.look();
    button = Parts.button("save", look.say("export"), look.say("export.tip"), look);
    button.addActionListener(
        event -> {
          Saving now = saving;
          if (now != null) {
            now.cancel(false);
          } else {
            menu().show(button, 0, button.getHeight());
          }
        });
    said = Parts.dim("save.said", "", look);
  }

  JButton button() {
    return button;
  }

  JLabel said() {
    return said;
  }

  /** What was said of another page is said no more. */
  void clear() {
    said.setText("");
  }

  /** What can be saved now. */
  List<Export> exports() {
    List<Export> exports = new ArrayList<>(page.get().exports());
    exports.add(Export.workbook(desk));
    return exports;
  }

  JPopupMenu menu() {
    JPopupMenu menu = new JPopupMenu();
    menu.setName("save.menu");
    for (Export export : exports()) {
      JMenuItem item = new JMenuItem(export.label());
      item.setName("save." + export.fileName());
      item.addActionListener(event -> save(export));
      menu.add(item);
    }
    return menu;
  }

  /** Asks where, and saves. */
  void save(Export export) {
    Path file = ask.save(export.fileName());
    if (file != null) {
      save(export, file);
    }
  }

  /** Saves on a worker thread what is shown now; meanwhile the button stops it. */
  void save(Export export, Path file) {
    if (saving == null) {
      Saving begun = new Saving(export.shown().get(), file);
      saving = begun;
      button.setText(desk.look().say("export.stop"));
      say(desk.look().say("export.under.way", file.getFileName(), 0), false);
      begun.execute();
    }
  }

  /** Whether something is being saved. */
  boolean isSaving() {
    return saving != null;
  }

  private void say(String text, boolean isTrouble) {
    said.setForeground(isTrouble ? desk.look().ink().heavyText() : desk.look().ink().dim());
    said.setText(text);
    said.getAccessibleContext().setAccessibleName(text);
  }

  /** One file. */
  private final class Saving extends SwingWorker<Path, Integer> {
    private final Export.File shown;
    private final Path file;
    private int told;

    Saving(Export.File shown, Path file) {
      this.shown = shown;
      this.file = file;
    }

    @Override
    protected Path doInBackground() throws IOException {
      ask.mayWrite(file);
      shown.write(
          file,
          share -> {
            if (isCancelled()) {
              throw new CancellationException();
            }
            int percent = (int) Math.min(100, share * 100);
            if (percent != told) {
              told = percent;
              publish(percent);
            }
          });
      return file;
    }

    @Override
    protected void process(List<Integer> chunks) {
      if (saving == this) {
        say(
            desk.look().say("export.under.way", file.getFileName(), chunks.get(chunks.size() - 1)),
            false);
      }
    }

    @Override
    protected void done() {
      saving = null;
      var look = desk.look();
      button.setText(look.say("export"));
      try {
        say(look.say("export.done", get().getFileName()), false);
        said.setToolTipText(file.toString());
      } catch (CancellationException stopped) {
        say(look.say("export.stopped", file.getFileName()), false);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      } catch (ExecutionException e) {
        say(look.say("export.failed", Reasons.of(e.getCause(), look)), true);
      }
    }
  }
}
