package org.evenpour.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.evenpour.audit.Audit;
import org.evenpour.audit.Audited;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.Episode;
import org.evenpour.control.MoldChange;
import org.evenpour.control.SuccessiveMonitor;
import org.evenpour.intake.EventsReader;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogHeader;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;
import org.evenpour.plant.SeenFile;
import org.evenpour.simulate.Condition;
import org.evenpour.simulate.SimulatedPlant;
import org.evenpour.simulate.Simulation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Logs of made plants that grow row by row from nothing: no judgement fails on the way, and at the
 * end the engine stands where a batch stands that reads the same log and judges by the same limits.
 *
 * <p>The beginning of one each time; {@code -Devenpour.plants=100 -Devenpour.turns=400
 * -Devenpour.seed=N} for more.
 */
@Tag("slow")
class GrowthTest {
  private static final int PLANTS = Integer.getInteger("evenpour.plants", 1);
  private static final int TURNS = Integer.getInteger("evenpour.turns", 60);

  /** While limits come and go everything is judged at once; later at every so many turns. */
  private static final int ALL_TURNS = PLANTS == 1 ? 6 : 20;

  private static final int EVERY_TURNS = PLANTS == 1 ? 18 : 10;

  @TempDir Path folder;

  @Test
  void aLogThatGrowsFromNothingStandsWhereABatchStands() throws Exception {
    long first = Long.getLong("evenpour.seed", 7001);
    long found = 0;
    for (long seed = first; seed < first + PLANTS; seed++) {
      System.out.println("growth: -Devenpour.seed=" + seed);
      Path plant = Files.createDirectories(folder.resolve("plant" + seed));
      SimulatedPlant.MADE.write(plant, seed, null, Condition.IDEAL);
      found += grown(seed, plant);
    }
    System.out.println("growth: " + found + " episodes, all as a batch finds them");
    if (PLANTS > 1) {
      assertThat(found).as("some signals were there to be found").isPositive();
    }
  }

  private static long grown(long seed, Path plant) throws Exception {
    Path log = plant.resolve(Simulation.LOG);
    List<String> lines = Files.readAllLines(log);
    Profiles profiles = ProfileReader.read(plant.resolve(Simulation.PROFILE));
    List<CastingEvent> events = EventsReader.read(plant.resolve(Simulation.EVENTS), profiles);
    LiveRecord live =
        new LiveRecord("log", profiles, events, SeenFile.beside(plant.resolve("none")));
    live.header(LogHeader.read("log", 1, lines.get(0), profiles));
    int column = List.of(lines.get(0).split(",")).indexOf("turn");
    Audited limits = null;
    int rows = 0;
    int turns = 0;
    int turn = -1;
    while (rows + 1 < lines.size()) {
      live.row(rows + 2L, lines.get(rows + 1).getBytes(StandardCharsets.UTF_8), SimulatedLog.NOW);
      rows++;
      int its = Integer.parseInt(lines.get(rows).split(",", -1)[column]);
      boolean isFirst = its != turn;
      turn = its;
      turns += isFirst ? 1 : 0;
      if (turns > TURNS) {
        break;
      }
      if (turns <= ALL_TURNS || isFirst && turns % EVERY_TURNS == 0) {
        try {
          Settling settling = live.settling();
          if (settling != null) {
            Settling.Settled done = settling.run();
            limits = done.audited() == null ? limits : done.audited();
            live.settled(done);
          }
        } catch (RuntimeException | StackOverflowError e) {
          throw new AssertionError("seed " + seed + ", after row " + rows, e);
        }
      }
    }
    assertThat(live.snapshot(0).unjudged()).as("seed %d", seed).isNull();
    Files.write(plant.resolve("part.csv"), lines.subList(0, rows + 1));
    CastingRecord batch = read(plant.resolve("part.csv"), profiles, events);
    assertThat(live.snapshot(0).rows()).as("seed %d", seed).isEqualTo(batch.rowsRead());
    assertThat(live.snapshot(0).rowsSetAside()).isEqualTo(batch.rowsSetAside());
    WheelRecord wheel = batch.wheels().get(0);
    List<List<Episode>> here = live.episodes(wheel.wheel());
    assertThat(here)
        .as("seed %d, %d rows", seed, rows)
        .isEqualTo(replayed(wheel, events, Objects.requireNonNull(limits)));
    return here.stream().mapToLong(List::size).sum();
  }

  private static CastingRecord read(Path log, Profiles profiles, List<CastingEvent> events)
      throws IntakeException {
    return LogReader.read(
        List.of(log), profiles, events, null, null, SetAside.nowhere(), Progress.NONE);
  }

  private static List<List<Episode>> replayed(
      WheelRecord wheel, List<CastingEvent> events, Audited by) {
    List<List<Episode>> episodes = new ArrayList<>();
    for (Characteristic characteristic : wheel.characteristics()) {
      SuccessiveMonitor monitor =
          new SuccessiveMonitor(
              by.terms(wheel.wheel(), characteristic.name()),
              wheel.profile(),
              wheel.molds(),
              wheel.sides(),
              wheel.serials(),
              (turn, at, value, anodes, startUp) -> {});
      double[] values = characteristic.values().toArray();
      List<MoldChange> changes = Audit.moldChanges(events, wheel);
      int next = 0;
      // As a replay, but that the last turn stays under way.
      for (int i = 0; i < values.length; i++) {
        long at = wheel.castAtMillis().get(i);
        while (next < changes.size() && changes.get(next).atMillis() <= at) {
          monitor.moldChanged(changes.get(next++));
        }
        monitor.accept(
            at,
            wheel.turn().get(i),
            wheel.mold().get(i),
            wheel.side().get(i),
            wheel.serial().get(i),
            values[i]);
      }
      episodes.add(monitor.episodes());
    }
    return episodes;
  }
}
