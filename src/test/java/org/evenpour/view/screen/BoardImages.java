package org.evenpour.view.screen;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.apache.commons.csv.CSVFormat;
import org.evenpour.casting.CastingEvent;
import org.evenpour.intake.EventsReader;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogHeader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.live.LiveRecord;
import org.evenpour.live.Snapshot;
import org.evenpour.plant.SeenFile;
import org.evenpour.view.model.BoardChoice;
import org.evenpour.view.model.BoardModel;
import org.evenpour.view.model.BoardReading;
import org.evenpour.view.model.DisplayUnits;
import org.evenpour.view.model.Language;
import org.evenpour.view.model.Look;

/** The board at some moments of a log as images, without a display. */
public final class BoardImages {
  /** A moment: after so many rows of the log, so many seconds after the last anode. */
  private record Moment(String name, int rows, long secondsLater) {}

  /** Of the sample week: nothing wrong; molds that run thin and thick; the feed silent. */
  private static final List<Moment> MOMENTS =
      List.of(
          new Moment("even", 1578, 12),
          new Moment("uneven", 5237, 12),
          new Moment("silent", 4089, 252));

  private BoardImages() {}

  /**
   * Draws the board.
   *
   * @param args a folder with {@code casting-log.csv}, {@code profile.yaml} and {@code events.csv};
   *     the folder to write to; then any number of {@code WIDTHxHEIGHT}, {@code light}, {@code
   *     dark}, {@code en} and {@code es}: every combination is drawn
   */
  public static void main(String[] args) throws IOException, IntakeException {
    Path from = Path.of(args[0]);
    Path to = Files.createDirectories(Path.of(args[1]));
    List<String> wishes = List.of(args).subList(2, args.length);
    for (Moment moment : MOMENTS) {
      Snapshot snapshot = snapshot(from, to, moment.rows());
      Instant arrived = snapshot.arrivedAt();
      Instant now = (arrived == null ? Instant.EPOCH : arrived).plusSeconds(moment.secondsLater());
      for (String size : wishes.stream().filter(wish -> wish.matches("\\d+x\\d+")).toList()) {
        int width = Integer.parseInt(size.substring(0, size.indexOf('x')));
        int height = Integer.parseInt(size.substring(size.indexOf('x') + 1));
        for (String theme : wishes.stream().filter(List.of("light", "dark")::contains).toList()) {
          for (String tag : wishes.stream().filter(Language.TAGS::contains).toList()) {
            Look look =
                Look.of(theme.equals("dark"), Language.of(tag), DisplayUnits.METRIC, height);
            BoardModel model = BoardReading.of(snapshot.lookedAt(now), now, look, BoardChoice.NONE);
            String name =
                String.format(
                    Locale.ROOT,
                    "board-%s-%s-%s%s.png",
                    moment.name(),
                    size,
                    theme,
                    tag.equals("en") ? "" : "-" + tag);
            ImageIO.write(draw(model, look, width, height), "png", to.resolve(name).toFile());
          }
        }
      }
    }
  }

  private static BufferedImage draw(BoardModel model, Look look, int width, int height) {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    BoardPainter.paint(g, model, look.ink(), width, height, "", "");
    g.dispose();
    return image;
  }

  /** What the board knew after so many rows. */
  private static Snapshot snapshot(Path from, Path to, int rows)
      throws IOException, IntakeException {
    Profiles profiles = ProfileReader.read(from.resolve("profile.yaml"));
    List<CastingEvent> events = EventsReader.read(from.resolve("events.csv"), profiles);
    List<String> lines = Files.readAllLines(from.resolve("casting-log.csv"));
    LiveRecord record =
        new LiveRecord(
            "casting-log.csv", profiles, events, new SeenFile(to.resolve("nobody.seen.csv")));
    record.header(LogHeader.read("casting-log.csv", 1, lines.get(0), profiles));
    CSVFormat format = CSVFormat.RFC4180;
    Instant castAt = Instant.EPOCH;
    for (int row = 1; row <= rows; row++) {
      String line = lines.get(row);
      castAt =
          OffsetDateTime.parse(format.parse(new StringReader(line)).iterator().next().get(0))
              .toInstant();
      record.row(row + 1L, line.getBytes(StandardCharsets.UTF_8), castAt);
    }
    record.caughtUp(castAt);
    return record.snapshot(0);
  }
}
