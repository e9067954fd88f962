package org.evenpour.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Scope;
import org.evenpour.findings.Advice;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.words.Words;

/**
 * Where to look when no recorded setting explains a signal: what the pattern of mass, thickness and
 * wedge leaves open. A pour makes mass, so mass that is off is the pour or its scale; thickness
 * that is off at constant mass is the cavity, its level or its warp (thickness = mass ÷ (density ×
 * plan area)); wedge is level (tilt × span); scatter of thickness in one mold is its wash and
 * spray.
 *
 * @param report whose signals are looked at together
 * @param sentences the wording
 */
public record NextSteps(AuditReport report, Sentences sentences) {
  /** What is left to look at. */
  private enum Step {
    /** Thickness off at constant mass: cavity, level, warp. */
    CAVITY(true, false),
    /** Wedge alone. */
    LEVEL(true, false),
    /** Thickness, and mass is not recorded. */
    CAVITY_OR_POUR(true, false),
    /** Scatter of thickness or wedge in one mold. */
    NOZZLE(false, true),
    /** Mass of one mold. */
    POUR(false, false),
    /** Mass and wedge of one mold. */
    POUR_LEVEL(true, false),
    /** Mass of a side or the wheel, and thickness of a side. */
    SCALE(false, false),
    /** Scatter of mass. */
    LAUNDER(false, false),
    /** Thickness of the whole wheel at constant mass. */
    GAUGE(false, false),
    /** Wedge of a side or the wheel. */
    WHEEL_LEVEL(false, false),
    /** A characteristic of the plant's own. */
    OTHER(true, true);

    private final boolean isMoldWork;
    private final boolean isWet;

    Step(boolean isMoldWork, boolean isWet) {
      this.isMoldWork = isMoldWork;
      this.isWet = isWet;
    }
  }

  /** That no setting explains a signal, and what is left; empty where it asks nothing. */
  public String of(Signal signal) {
    return of(new Topic(List.of(signal)));
  }

  /** The same of signals that are said together. */
  public String of(Topic topic) {
    String step = step(topic);
    return step.isEmpty() ? "" : words().say("link.none") + " " + step;
  }

  /** What is left to look at, what is to be minded before it; empty where it asks nothing. */
  public String step(Topic topic) {
    if (!topic.isUnexplained()) {
      return "";
    }
    Step its = stepOf(topic);
    return Words.capital(Advice.before(cautions(Set.of(its)), said(its)));
  }

  /**
   * Once for all that no setting explains: that it is so, what is to be minded, and who is to be
   * looked at how; empty where settings explain all.
   *
   * @param topics what is told
   */
  public String once(List<Topic> topics) {
    Map<Step, List<Topic>> where = new LinkedHashMap<>();
    for (Topic topic : topics) {
      if (topic.isUnexplained()) {
        where.computeIfAbsent(stepOf(topic), any -> new ArrayList<>()).add(topic);
      }
    }
    if (where.isEmpty()) {
      return "";
    }
    long unexplained = topics.stream().filter(Topic::isUnexplained).count();
    String form = topics.size() == 1 ? "" : unexplained == 1 ? ".one" : ".these";
    List<String> said = new ArrayList<>(List.of(words().say("link.none" + form)));
    said.addAll(cautions(where.keySet()));
    where.forEach(
        (step, its) ->
            said.add(words().say("step.of", Words.capital(sentences.places(its)), said(step))));
    return String.join(" ", said);
  }

  private List<String> cautions(Set<Step> steps) {
    if (steps.stream().anyMatch(step -> step.isMoldWork)) {
      return sentences.cautions().ofMoldWork();
    }
    return steps.stream().anyMatch(step -> step.isWet) ? List.of(words().say("dry")) : List.of();
  }

  private String said(Step step) {
    return words().say("step." + step.name().toLowerCase(Locale.ROOT));
  }

  private Step stepOf(Topic topic) {
    Scope scope = topic.first().scope();
    boolean mass = isOff(topic, true, Quantity.MASS) || isOff(topic, true, Quantity.MASS_DEVIATION);
    boolean thickness = isOff(topic, true, Quantity.THICKNESS);
    boolean wedge = isOff(topic, true, Quantity.WEDGE);
    if (!mass && !thickness && !wedge) {
      boolean ofMass =
          isOff(topic, false, Quantity.MASS) || isOff(topic, false, Quantity.MASS_DEVIATION);
      boolean ofThickness =
          isOff(topic, false, Quantity.THICKNESS) || isOff(topic, false, Quantity.WEDGE);
      return ofMass ? Step.LAUNDER : ofThickness ? Step.NOZZLE : Step.OTHER;
    }
    if (scope != Scope.MOLD) {
      boolean isMassUsual = isMassRecorded(topic) && !mass;
      return mass || (thickness && scope == Scope.SIDE)
          ? Step.SCALE
          : thickness ? isMassUsual ? Step.GAUGE : Step.SCALE : Step.WHEEL_LEVEL;
    }
    if (mass) {
      return wedge ? Step.POUR_LEVEL : Step.POUR;
    }
    return !thickness ? Step.LEVEL : isMassRecorded(topic) ? Step.CAVITY : Step.CAVITY_OR_POUR;
  }

  private boolean isMassRecorded(Topic topic) {
    return report.characteristics().stream()
        .anyMatch(
            one ->
                one.wheel().equals(topic.first().wheel())
                    && one.monitoring().notLookedFor() == null
                    && (one.name().equals(Quantity.MASS)
                        || one.name().equals(Quantity.MASS_DEVIATION)));
  }

  /**
   * Whether a characteristic is off, or scatters, at one of the places of a topic while it lasts:
   * by its own signals, or by others there.
   */
  private boolean isOff(Topic topic, boolean isLevel, String characteristic) {
    return report.signals().stream()
            .anyMatch(other -> is(other, isLevel, characteristic) && isThere(topic, other))
        || topic.signals().stream().anyMatch(one -> is(one, isLevel, characteristic));
  }

  private static boolean is(Signal one, boolean isLevel, String characteristic) {
    return one.characteristic().equals(characteristic)
        && (one.direction() != Direction.SPREAD) == isLevel;
  }

  private static boolean isThere(Topic topic, Signal other) {
    return topic.signals().stream()
        .anyMatch(
            one ->
                one.wheel().equals(other.wheel())
                    && one.scope() == other.scope()
                    && Objects.equals(one.mold(), other.mold())
                    && Objects.equals(one.side(), other.side())
                    && Topic.overlap(one, other));
  }

  private Words words() {
    return sentences.words();
  }
}
