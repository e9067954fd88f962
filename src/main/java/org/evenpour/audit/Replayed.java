package org.evenpour.audit;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.evenpour.control.CharacteristicMonitor;
import org.evenpour.control.Episode;
import org.evenpour.control.SuccessiveMonitor;
import org.evenpour.control.SuccessiveMonitor.Judged;
import org.evenpour.findings.AuditReport.TurnPoint;
import org.evenpour.stats.RunTest;

/**
 * What the engine's monitor made of the anodes of one characteristic, whoever handed them to it: a
 * replay of a record, or a feed while they were cast.
 *
 * @param judged which turns by which limits
 * @param episodes as the closed turns show them
 * @param counts how often each run test completed on the wheel's classic chart, by its id
 * @param turns the closed turns' effects
 */
public record Replayed(
    List<Judged> judged, List<Episode> episodes, Map<String, Long> counts, List<TurnPoint> turns) {

  /** Copies the lists. */
  public Replayed {
    judged = List.copyOf(judged);
    episodes = List.copyOf(episodes);
    turns = List.copyOf(turns);
  }

  /**
   * Gathers the effects of turns that close.
   *
   * @param into takes those that are known
   */
  public static CharacteristicMonitor.TurnListener gathering(List<TurnPoint> into) {
    return (turn, at, effect, anodes, startUp) -> {
      if (!Double.isNaN(effect)) {
        into.add(new TurnPoint(turn, Instant.ofEpochMilli(at), effect, anodes, startUp));
      }
    };
  }

  /**
   * As it stands now, whatever the monitor is handed later.
   *
   * @param turns that the monitor's listener heard of
   */
  public static Replayed of(SuccessiveMonitor monitor, List<TurnPoint> turns) {
    Map<String, Long> counts = new LinkedHashMap<>();
    for (RunTest test : RunTest.values()) {
      counts.put(test.id(), monitor.count(test));
    }
    return new Replayed(monitor.judged(), monitor.episodes(), counts, turns);
  }
}
