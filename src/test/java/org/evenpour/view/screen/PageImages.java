package org.evenpour.view.screen;

import java.awt.Component;
import java.awt.Container;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.swing.JComponent;
import javax.swing.SwingUtilities;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.intake.IntakeException;
import org.evenpour.plant.PlantFiles;
import org.evenpour.view.model.DisplayUnits;
import org.evenpour.view.model.Language;
import org.evenpour.view.model.Look;
import org.evenpour.view.model.OpenedLog;
import org.evenpour.view.model.Sample;
import org.evenpour.view.model.Selection;

/** Every page of the desk as an image, without a display. */
public final class PageImages {
  private PageImages() {}

  /**
   * Draws the pages of a log.
   *
   * @param args a folder with {@code casting-log.csv}, {@code profile.yaml} and {@code events.csv};
   *     the folder to write to; then any number of {@code WIDTHxHEIGHT}, {@code light}, {@code
   *     dark}, {@code en} and {@code es}: every combination is drawn
   */
  public static void main(String[] args)
      throws IOException, IntakeException, InterruptedException, InvocationTargetException {
    Path from = Path.of(args[0]);
    Path to = Files.createDirectories(Path.of(args[1]));
    List<String> wishes = List.of(args).subList(2, args.length);
    PlantFiles sources =
        new PlantFiles(
            List.of(from.resolve("casting-log.csv")),
            from.resolve("profile.yaml"),
            from.resolve("events.csv"));
    OpenedLog log = Sample.read(sources);
    for (String size : wishes.stream().filter(wish -> wish.matches("\\d+x\\d+")).toList()) {
      int width = Integer.parseInt(size.substring(0, size.indexOf('x')));
      int height = Integer.parseInt(size.substring(size.indexOf('x') + 1));
      for (String theme : wishes.stream().filter(List.of("light", "dark")::contains).toList()) {
        for (String tag : wishes.stream().filter(Language.TAGS::contains).toList()) {
          for (String page : Pages.KEYS) {
            Look look =
                Look.of(theme.equals("dark"), Language.of(tag), DisplayUnits.METRIC, height);
            List<BufferedImage> drawn = new ArrayList<>();
            SwingUtilities.invokeAndWait(
                () -> drawn.add(draw(log, sources, look, page, width, height)));
            String name =
                String.format(Locale.ROOT, "desk-%s-%s-%s%s.png", page, size, theme, suffix(tag));
            ImageIO.write(drawn.get(0), "png", to.resolve(name).toFile());
          }
        }
      }
    }
  }

  private static String suffix(String tag) {
    return tag.equals("en") ? "" : "-" + tag;
  }

  private static BufferedImage draw(
      OpenedLog log, PlantFiles sources, Look look, String page, int width, int height) {
    Theme.install(look.ink());
    DeskPlace desk = new DeskPlace(Asks.NOBODY, InstantSource.fixed(Instant.EPOCH), opened -> {});
    WindowScreen window =
        new WindowScreen(
            look,
            List.of(desk),
            "desk",
            new WindowScreen.Acts(key -> {}, () -> {}, () -> {}, files -> {}));
    desk.turnTo(page);
    desk.show(log, sources);
    choose(log, desk.selection(), page);
    DeskScreen shown = desk.desk();
    if (shown != null && shown.page() instanceof ComparePage compare) {
      compare.turnTo("4"); // a mold that was changed
      compare.now();
    } else if (shown != null && shown.page() instanceof LimitsPage limits) {
      limits.now();
    }
    window.says(WindowText.of(log, look));
    return image(window.screen(), width, height);
  }

  /** Chooses what makes the page tell something: the characteristic and what departed most. */
  private static void choose(OpenedLog log, Selection selection, String page) {
    Comparator<Signal> bySize = Comparator.comparingDouble(one -> Math.abs(one.sizeSigma()));
    List<Signal> ofMolds =
        log.report().signals().stream()
            .filter(signal -> signal.scope() == Scope.MOLD && !signal.links().isEmpty())
            .toList();
    Signal largest = ofMolds.stream().max(bySize).orElse(null);
    Signal holding = ofMolds.stream().filter(Signal::open).max(bySize).orElse(largest);
    if (largest == null || holding == null) {
      return;
    }
    selection.chooseCharacteristic(holding.characteristic());
    switch (page) {
      case "molds" -> selection.chooseMold(holding.mold());
      case "signals" -> selection.chooseSignal(largest);
      default -> {}
    }
  }

  /** Lays out a screen that no window holds, and paints it. */
  static BufferedImage image(JComponent screen, int width, int height) {
    screen.setSize(width, height);
    // Text that wraps knows its height only once it has its width.
    for (int i = 0; i < 3; i++) {
      layOut(screen);
    }
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    screen.paint(g);
    g.dispose();
    return image;
  }

  private static void layOut(Component part) {
    part.doLayout();
    if (part instanceof Container container) {
      for (Component inner : container.getComponents()) {
        layOut(inner);
      }
    }
  }
}
