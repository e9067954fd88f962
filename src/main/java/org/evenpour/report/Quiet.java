package org.evenpour.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.NotLookedFor;
import org.evenpour.words.Words;

/**
 * What is said where there is no signal: that nothing stands out where signals were looked for, and
 * where not, why not.
 *
 * @param looked names of the characteristics that were looked at
 * @param unlooked the others, those with the same reason together
 * @param beyond whether the wheel stands off beyond what its settings explain, which is said beside
 *     this
 */
public record Quiet(List<String> looked, List<Unlooked> unlooked, boolean beyond) {

  /** Characteristics that were not looked at, for the same reason. */
  private record Unlooked(List<String> names, NotLookedFor why) {}

  /** Copies the lists. */
  public Quiet {
    looked = List.copyOf(looked);
    unlooked = List.copyOf(unlooked);
  }

  /** Of these characteristics; each with its wheel where there are several. */
  public static Quiet of(List<CharacteristicReport> characteristics, Sentences sentences) {
    return of(characteristics, sentences, false);
  }

  private static Quiet of(
      List<CharacteristicReport> characteristics, Sentences sentences, boolean beyond) {
    List<String> looked = new ArrayList<>();
    Map<NotLookedFor, List<String>> unlooked = new LinkedHashMap<>();
    for (CharacteristicReport each : characteristics) {
      String name = sentences.words().characteristic(each.name());
      String whose = sentences.nameWheels() ? sentences.label(each.wheel()) + " " + name : name;
      NotLookedFor why = each.monitoring().notLookedFor();
      if (why == null) {
        looked.add(whose);
      } else {
        unlooked.computeIfAbsent(why, w -> new ArrayList<>()).add(whose);
      }
    }
    return new Quiet(
        looked,
        unlooked.entrySet().stream().map(e -> new Unlooked(e.getValue(), e.getKey())).toList(),
        beyond);
  }

  /** Of all characteristics of a report. */
  public static Quiet of(AuditReport report, Sentences sentences) {
    return of(report.characteristics(), sentences, !report.watched().beyond().alone().isEmpty());
  }

  /** Whether signals of everything were looked for, and there is something. */
  public boolean isWhole() {
    return unlooked.isEmpty() && !looked.isEmpty();
  }

  /** What is said where no signal was found. */
  public List<String> lines(Words words) {
    List<String> lines = new ArrayList<>();
    if (beyond) {
      lines.add(words.say("quiet.else"));
    } else if (isWhole()) {
      lines.add(words.say("quiet"));
    } else if (!looked.isEmpty()) {
      lines.add(words.say("quiet.in", words.list(looked)));
    } else if (unlooked.isEmpty()) {
      lines.add(words.say("unlooked.nothing"));
    }
    lines.addAll(notLookedFor(words));
    return lines;
  }

  /** What was not looked for, and why; empty where everything was. */
  public List<String> notLookedFor(Words words) {
    return unlooked.stream()
        .map(each -> words.say("unlooked", words.list(each.names()), words.say(each.why().why())))
        .toList();
  }
}
