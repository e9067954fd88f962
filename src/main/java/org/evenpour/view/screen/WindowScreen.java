package org.evenpour.view.screen;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JToggleButton;
import javax.swing.TransferHandler;
import net.miginfocom.swing.MigLayout;
import org.evenpour.view.model.Look;

/** What stands in the window, for one look: the places' names at the top, and a place. */
final class WindowScreen {
  private final JPanel screen;
  private final JPanel deck;
  private final CardLayout cards = new CardLayout();
  private final JLabel open;

  /**
   * @param places in their order
   * @param chosen key of the place that is seen first
   * @param acts what the buttons do
   */
  WindowScreen(Look look, List<Place> places, String chosen, Acts acts) {
    deck = Parts.panel("window.deck", cards, look.ink().ground());
    open = Parts.dim("window.open", "", look);
    JPanel bar =
        Parts.panel(
            "window.bar",
            new MigLayout(
                "fill, insets "
                    + look.px(6)
                    + " "
                    + look.px(8)
                    + " "
                    + look.px(6)
                    + " "
                    + look.px(8),
                "[]" + look.px(16) + "[grow]" + look.px(8) + "[]" + look.px(4) + "[]"),
            look.ink().ground());
    JPanel names =
        Parts.panel(
            "window.places", new MigLayout("insets 0, gap " + look.px(4)), look.ink().ground());
    ButtonGroup group = new ButtonGroup();
    for (Place place : places) {
      JToggleButton button =
          Parts.toggle(
              "place." + place.key() + ".choose", look.say("place." + place.key()), "", look);
      button.setFont(look.ink().bold(1.05));
      button.setSelected(place.key().equals(chosen));
      button.addActionListener(event -> acts.place().accept(place.key()));
      group.add(button);
      names.add(button);
      deck.add(place.screen(look), place.key());
    }
    cards.show(deck, chosen);
    JButton units = Parts.button("units", look.units().label(), look.say("button.units.tip"), look);
    units.addActionListener(event -> acts.units().run());
    JToggleButton dark = Parts.toggle("dark", look.say("menu.dark"), "", look);
    dark.setSelected(look.ink().dark());
    dark.addActionListener(event -> acts.dark().run());
    bar.add(names);
    bar.add(open, "wmin 20");
    bar.add(units);
    bar.add(dark);
    screen = Parts.panel("window", new BorderLayout(), look.ink().ground());
    screen.add(bar, BorderLayout.NORTH);
    deck.setBorder(BorderFactory.createEmptyBorder(0, look.px(8), look.px(8), look.px(8)));
    screen.add(deck, BorderLayout.CENTER);
    screen.setTransferHandler(new Dropping(acts.files()));
  }

  /**
   * What the window does for its screen.
   *
   * @param place shows a place
   * @param units changes to the other units
   * @param dark changes between light and dark
   * @param files opens files that were dropped
   */
  record Acts(Consumer<String> place, Runnable units, Runnable dark, Consumer<List<Path>> files) {}

  JPanel screen() {
    return screen;
  }

  /** Must be called when another screen takes its place: what still holds a part holds no other. */
  void close() {
    deck.removeAll();
    screen.removeAll();
  }

  void choose(String place) {
    cards.show(deck, place);
  }

  /** Says what is open. */
  void says(String text) {
    open.setText(text);
  }

  /** Takes dropped files. */
  private static final class Dropping extends TransferHandler {
    private final transient Consumer<List<Path>> files;

    Dropping(Consumer<List<Path>> files) {
      this.files = files;
    }

    @Override
    public boolean canImport(TransferSupport support) {
      return support.isDataFlavorSupported(DataFlavor.javaFileListFlavor);
    }

    @Override
    public boolean importData(TransferSupport support) {
      if (!canImport(support)) {
        return false;
      }
      try {
        List<?> dropped =
            (List<?>) support.getTransferable().getTransferData(DataFlavor.javaFileListFlavor);
        List<Path> paths =
            dropped.stream()
                .filter(File.class::isInstance)
                .map(one -> ((File) one).toPath())
                .toList();
        files.accept(paths);
        return !paths.isEmpty();
      } catch (UnsupportedFlavorException | IOException e) {
        return false;
      }
    }
  }
}
