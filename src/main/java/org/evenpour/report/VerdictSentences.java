package org.evenpour.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.evenpour.casting.Direction;
import org.evenpour.casting.MoldOrder;
import org.evenpour.casting.Specification;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.CapabilityInFull.WhatIf;
import org.evenpour.findings.MoldVerdict;
import org.evenpour.findings.MoldVerdict.Standing;
import org.evenpour.findings.MoldVerdict.ThickSide;
import org.evenpour.findings.MoldVerdict.Trend;
import org.evenpour.findings.MoldVerdict.Verdict;
import org.evenpour.findings.RejectReport;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * Says what to do with a mold and why, in one sentence each.
 *
 * @param report that the verdicts are of
 * @param sentences the wording
 */
public record VerdictSentences(AuditReport report, Sentences sentences) {

  private static final Verdict[] GRAVEST_FIRST = {
    Verdict.REPLACE, Verdict.LEVEL, Verdict.WATCH, Verdict.KEEP
  };

  /** Keep, watch, level or dress, replace; a dash where nothing can be said. */
  public String verdict(MoldVerdict verdict) {
    Verdict its = verdict.verdict();
    return words().say(its == null ? "missing" : "verdict." + key(its));
  }

  /**
   * What is to be minded before the work that a verdict asks for, to be said before the verdict;
   * empty where it asks for none.
   */
  public String caution(MoldVerdict verdict) {
    Verdict its = verdict.verdict();
    return its == Verdict.REPLACE || its == Verdict.LEVEL ? caution() : "";
  }

  private String caution() {
    return String.join(" ", sentences.cautions().ofMoldWork());
  }

  /** What is to be minded before any of the molds' verdicts is followed; empty where none asks. */
  public String cautionOfAll() {
    return report.verdicts().stream().map(this::caution).anyMatch(said -> !said.isEmpty())
        ? caution()
        : "";
  }

  /** Why, with the figures; where it says what to look at, what is to be minded comes before. */
  public String reason(MoldVerdict verdict) {
    Standing one = verdict.standing(verdict.characteristic());
    String key = "why." + key(verdict.reason());
    return switch (verdict.reason()) {
      case LIFE ->
          words()
              .say(
                  key,
                  words().count(verdict.castsOnMold() == null ? 0 : verdict.castsOnMold()),
                  Digits.number(verdict.tonnes() == null ? 0 : verdict.tonnes(), 0));
      case FEW -> words().say(key, words().count(verdict.casts()));
      case NO_TOLERANCE -> words().say(key);
      case SIGNAL -> signal(verdict);
      case REJECTS -> rejects(verdict);
      default -> one == null ? words().say("missing") : byStanding(key, verdict, one);
    };
  }

  private String rejects(MoldVerdict verdict) {
    RejectReport rejects = RejectReport.ofWheel(report.rejects(), verdict.wheel());
    RejectReport.Spell spell = rejects == null ? null : rejects.holding(verdict.mold());
    if (spell != null) {
      return new RejectText(sentences).spell(spell);
    }
    RejectReport.OfMold its = rejects == null ? null : rejects.of(verdict.mold());
    return its == null
        ? words().say("missing")
        : words()
            .say(
                its.most().isEmpty() ? "why.rejects" : "why.rejects.for",
                words().count(its.share().rejected()),
                words().count(its.share().of()),
                Digits.percent(its.share().value()),
                sentences.label(RejectReport.plain(its.most())));
  }

  private String byStanding(String key, MoldVerdict verdict, Standing one) {
    Figures figures = sentences.figures(verdict.wheel(), one.characteristic());
    String name = words().characteristic(one.characteristic());
    String offset = figures.departure(one.offset(), figures.decimalsOf(one.offset()));
    return switch (verdict.reason()) {
      case WEARS, TREND -> trend(key, verdict, figures, name, one);
      case SETTING ->
          words()
              .say(
                  key,
                  name,
                  offset,
                  verdict.setting() == null
                      ? words().say("missing")
                      : sentences.setting(verdict.setting()),
                  cautionOfSetting(verdict));
      case SCATTERS ->
          words()
              .say(key, name, one.sd() == null ? words().say("missing") : figures.spread(one.sd()));
      case STEP -> {
        Estimate step = one.step();
        yield words()
            .say(
                key,
                name,
                step == null
                    ? words().say("missing")
                    : figures.departure(step.value(), figures.decimalsOf(step.value())),
                caution());
      }
      case WEDGE -> words().say(key, figures.mean(one.level()), index(one.room())) + thick(verdict);
      case CAVITY -> words().say(key, offset, area(verdict), index(one.room())) + thick(verdict);
      case SOUND, MASS_ALONE -> words().say(key, name, index(one.room()));
      default -> words().say(key, name, offset, index(one.room()));
    };
  }

  /** Whatever the setting: who looks at it stands beside a mold. */
  private String cautionOfSetting(MoldVerdict verdict) {
    Set<String> all = new LinkedHashSet<>(List.of(words().say("dry")));
    if (verdict.setting() != null) {
      all.addAll(sentences.cautions().of(report, verdict.wheel(), verdict.setting()));
    }
    return String.join(" ", all);
  }

  private String trend(
      String key, MoldVerdict verdict, Figures figures, String name, Standing one) {
    Trend trend = one.trend();
    Double left = trend == null ? null : trend.castsLeft();
    if (trend == null || left == null) {
      return words().say("missing");
    }
    return words()
        .say(
            key,
            name,
            figures.departure(trend.per100(), figures.decimalsOf(trend.per100())),
            limit(verdict, one, trend.per100() < 0, figures),
            range(left, trend.castsLeftLow(), trend.castsLeftHigh()));
  }

  /** The limit that a trend goes to, in words: {@code the lower limit, 43.2 mm}. */
  private String limit(MoldVerdict verdict, Standing one, boolean isLower, Figures figures) {
    for (CharacteristicReport characteristic : report.characteristics()) {
      Specification its = characteristic.specification();
      Double limit = isLower ? its.lower() : its.upper();
      if (limit != null
          && characteristic.wheel().equals(verdict.wheel())
          && characteristic.name().equals(one.characteristic())) {
        return words().say(isLower ? "limit.lower" : "limit.upper", figures.value(limit));
      }
    }
    return words().say("missing");
  }

  /** {@code 320 (250 to 440)}, casts to two digits: no forecast is better. */
  public String range(double value, @Nullable Double low, @Nullable Double high) {
    String best = casts(value);
    return low == null || high == null
        ? best
        : words().say("summary.estimate", best, casts(low), casts(high));
  }

  private String casts(double casts) {
    long step = casts < 100 ? 1 : casts < 1000 ? 10 : 100;
    return words().count(Math.round(casts / step) * step);
  }

  private String signal(MoldVerdict verdict) {
    for (Signal signal : report.signals()) {
      if (signal.id().equals(verdict.signal())) {
        return sentences.brief(new Topic(List.of(signal)));
      }
    }
    return words().say("missing");
  }

  /** By how many per cent the plan area is off. */
  private String area(MoldVerdict verdict) {
    Standing area = verdict.standing("plan_area");
    if (area == null) {
      return words().say("missing");
    }
    double percent = 100 * area.offset() / (area.level() - area.offset());
    String number = Digits.number(percent, 1);
    return (percent > 0 ? "+" : "") + words().say("summary.percent", number);
  }

  private String thick(MoldVerdict verdict) {
    String side = thickSide(verdict.thickSide());
    return side.isEmpty() ? "" : " " + words().say("why.thick", side);
  }

  /** The thick side in words; empty where there is none to speak of. */
  public String thickSide(@Nullable ThickSide side) {
    return side == null || side.side() == null ? "" : words().say("side." + side.side());
  }

  private String index(@Nullable Estimate estimate) {
    return estimate == null ? words().say("missing") : Digits.number(estimate.value(), 2);
  }

  /** All molds in one line, the gravest first: {@code Molds: level or dress 8 and 11; keep 24}. */
  public List<String> overview() {
    List<String> lines = new ArrayList<>();
    for (String wheel : report.log().wheels()) {
      Map<Verdict, List<String>> molds = new EnumMap<>(Verdict.class);
      for (MoldVerdict one : report.verdicts()) {
        if (one.wheel().equals(wheel) && one.verdict() != null) {
          molds
              .computeIfAbsent(one.verdict(), any -> new ArrayList<>())
              .add(sentences.label(one.mold()));
        }
      }
      List<String> parts = new ArrayList<>();
      for (Verdict verdict : GRAVEST_FIRST) {
        List<String> those =
            molds.getOrDefault(verdict, List.of()).stream().sorted(MoldOrder::compare).toList();
        if (!those.isEmpty()) {
          parts.add(
              verdict == Verdict.KEEP
                  ? words()
                      .say(parts.isEmpty() ? "verdicts.keep.all" : "verdicts.keep", those.size())
                  : words()
                      .say(
                          "verdicts.one",
                          words().say("verdict." + key(verdict)),
                          words().list(those)));
        }
      }
      if (!parts.isEmpty()) {
        String said = String.join("; ", parts);
        lines.add(
            (sentences.nameWheels()
                    ? words().say("verdicts.wheel", sentences.label(wheel), said)
                    : words().say("verdicts", said))
                + unjudged(wheel));
      }
    }
    return lines;
  }

  /** What the record is too short or too bare to tell of a wheel's molds; empty where nothing. */
  private String unjudged(String wheel) {
    List<MoldVerdict> its =
        report.verdicts().stream().filter(one -> one.wheel().equals(wheel)).toList();
    if (its.stream().anyMatch(one -> one.reason() == MoldVerdict.Reason.MASS_ALONE)) {
      return " " + words().say("verdicts.mass_alone");
    }
    return its.stream().anyMatch(MoldVerdict::tellsWear) ? "" : " " + words().say("verdicts.short");
  }

  /** The change that would do most for a characteristic; null where none is worth a sentence. */
  public @Nullable String whatIf(CharacteristicReport characteristic) {
    List<WhatIf> all = characteristic.inFull().whatIfs();
    return all.isEmpty() || all.get(0).ppk() < all.get(0).ppkNow() + 0.1
        ? null
        : whatIf(characteristic, all.get(0));
  }

  /**
   * The characteristic with the least capability among those that one change would help; null where
   * none is worth a sentence.
   */
  public @Nullable CharacteristicReport biggestLever() {
    return report.characteristics().stream()
        .filter(one -> whatIf(one) != null)
        .min(Comparator.comparingDouble(one -> one.inFull().whatIfs().get(0).ppkNow()))
        .orElse(null);
  }

  /** What one change would do. */
  public String whatIf(CharacteristicReport characteristic, WhatIf one) {
    String name = words().characteristic(characteristic.name());
    return words()
        .say(
            "what_if." + key(one.without()),
            sentences.nameWheels() ? sentences.label(characteristic.wheel()) + " " + name : name,
            Digits.number(one.ppk(), 2),
            Digits.number(one.ppkNow(), 2));
  }

  /** Which way a mold stands off: a mark and a word; empty where it does not stand out. */
  public String stands(Standing one) {
    if (!one.standsOut()) {
      return "";
    }
    Direction way = one.offset() > 0 ? Direction.HIGH : Direction.LOW;
    return words().say("mark." + key(way)) + " " + sentences.state(one.characteristic(), way);
  }

  private Words words() {
    return sentences.words();
  }

  private static String key(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }
}
