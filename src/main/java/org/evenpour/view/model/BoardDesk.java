package org.evenpour.view.model;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.function.Supplier;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.live.LiveEngine;
import org.evenpour.live.Snapshot;
import org.evenpour.live.WheelNow;
import org.evenpour.plant.Seen;
import org.jspecify.annotations.Nullable;

/**
 * What the board knows and what the crew has chosen on it; it outlives the board's screens. Owned
 * by the event thread.
 */
public final class BoardDesk {

  /** Keeps that somebody has seen a signal. */
  @FunctionalInterface
  public interface Acknowledging {
    /** Keeps it. */
    void acknowledge(Signal signal, String who, String note);
  }

  /** Tells whenever something new is known. */
  @FunctionalInterface
  public interface Telling {
    /**
     * Tells a listener from now on, on any thread.
     *
     * @return ends it
     */
    Runnable tell(Runnable listener);
  }

  private static final double MINUTES_IN_AN_HOUR = 60;

  private final Supplier<Snapshot> source;
  private final Telling telling;
  private final Acknowledging acknowledging;
  private final InstantSource clock;
  private BoardChoice choice = BoardChoice.NONE;
  private List<Signal> held = List.of();
  private @Nullable Made made;

  /**
   * @param source of what is known
   * @param telling when it is new
   * @param acknowledging keeps what was seen
   * @param clock tells the time of day
   */
  public BoardDesk(
      Supplier<Snapshot> source,
      Telling telling,
      Acknowledging acknowledging,
      InstantSource clock) {
    this.source = source;
    this.telling = telling;
    this.acknowledging = acknowledging;
    this.clock = clock;
  }

  /** For an engine. */
  public static BoardDesk of(LiveEngine engine, InstantSource clock) {
    return new BoardDesk(engine::snapshot, engine::onSnapshot, engine::acknowledge, clock);
  }

  /**
   * Tells whenever something new is known, on any thread.
   *
   * @return ends it
   */
  public Runnable onNews(Runnable listener) {
    return telling.tell(listener);
  }

  /** What stands on the board now. */
  public BoardModel model(Look look) {
    Snapshot now = source.get();
    Instant at = clock.instant().truncatedTo(ChronoUnit.SECONDS);
    Made before = made;
    if (before != null && before.isOf(now, at, look, choice)) {
      return before.model();
    }
    BoardModel model = BoardReading.of(now, at, look, choice);
    made = new Made(now, at, look, choice, model);
    return model;
  }

  /** A model and what it was made of: several times a second nothing has changed. */
  private record Made(
      Snapshot snapshot, Instant at, Look look, BoardChoice choice, BoardModel model) {

    @SuppressWarnings("ReferenceEquality") // the very same snapshot; to compare it would cost more
    boolean isOf(Snapshot other, Instant otherAt, Look otherLook, BoardChoice otherChoice) {
      return snapshot == other
          && at.equals(otherAt)
          && look == otherLook
          && choice.equals(otherChoice);
    }
  }

  /** One of the board's words. */
  public String say(String key, Look look) {
    return BoardWords.of(look.language()).say(key);
  }

  /** What was chosen. */
  public BoardChoice choice() {
    return choice;
  }

  /** Does what a key is for: {@code next}, {@code ring}, …; what it does not know is let be. */
  public void act(String name) {
    Snapshot now = source.get();
    WheelNow wheel = BoardReading.wheel(now, choice);
    if (wheel == null) {
      return;
    }
    int topics = BoardReading.topics(now, choice);
    switch (name) {
      case "next" -> choice = choice.withSignal(step(choice.signal(), 1, topics));
      case "previous" -> choice = choice.withSignal(step(choice.signal(), -1, topics));
      case "ring" -> {
        List<String> names = BoardReading.ringChoices(wheel);
        int at = names.indexOf(BoardReading.ring(wheel, choice));
        choice = choice.withRing(names.get((at + 1) % names.size()));
      }
      case "wheel" -> {
        List<String> wheels = now.wheels().stream().map(WheelNow::wheel).toList();
        int next = wheels.indexOf(wheel.wheel()) + 1;
        choice = choice.withWheel(wheels.get(next % wheels.size()));
      }
      case "pouring" -> choice = choice.turned();
      case "reverse" -> choice = choice.reversed();
      default -> {}
    }
  }

  private static int step(int from, int by, int count) {
    return count == 0 ? 0 : Math.floorMod(Math.min(from, count - 1) + by, count);
  }

  /** The note that is being written is about these, whatever comes meanwhile. */
  public void hold(List<Signal> signals) {
    held = List.copyOf(signals);
  }

  /**
   * The name on the newest note, to be offered for the next one; empty where that was an earlier
   * shift's.
   */
  public String who() {
    Snapshot now = source.get();
    WheelNow wheel = BoardReading.wheel(now, choice);
    if (wheel == null || now.seen().isEmpty()) {
      return "";
    }
    Seen newest = now.seen().get(now.seen().size() - 1);
    double hours =
        Duration.between(newest.at(), clock.instant()).abs().toMinutes() / MINUTES_IN_AN_HOUR;
    return hours < wheel.profile().shiftHours() ? newest.who() : "";
  }

  /**
   * Keeps a note on what is held.
   *
   * @param who writes it; empty where they do not say
   */
  public void acknowledge(String who, String note) {
    for (Signal signal : held) {
      acknowledging.acknowledge(signal, who, note);
    }
    held = List.of();
    choice = choice.withSignal(0);
  }
}
