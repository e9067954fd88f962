package org.evenpour.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.evenpour.audit.RejectRows.Batches;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.MoldOrder;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.IntColumn;
import org.evenpour.column.Labels;
import org.evenpour.findings.RejectReport;
import org.evenpour.findings.RejectReport.OfClass;
import org.evenpour.findings.RejectReport.OfGroup;
import org.evenpour.findings.RejectReport.OfMold;
import org.evenpour.findings.RejectReport.Share;
import org.evenpour.stats.Proportion;
import org.evenpour.stats.Shares;
import org.jspecify.annotations.Nullable;

/** Counts what was rejected of a wheel's anodes: by defect, mold, ladle side, crew and charge. */
final class RejectCounts {
  private static final double CONFIDENCE = 0.95;

  /** Chance that any mold is said to stand out where none does. A choice, as for molds' offsets. */
  private static final double ALPHA = 0.05;

  private final WheelRecord wheel;
  private final TurnIndex turns;
  private final IntColumn disposition;
  private final boolean[] isRejected;
  private final Labels defects;
  private final @Nullable IntColumn defect;

  private RejectCounts(WheelRecord wheel, TurnIndex turns, Setting disposition, IntColumn codes) {
    this.wheel = wheel;
    this.turns = turns;
    this.disposition = codes;
    isRejected = new boolean[disposition.labels().size()];
    for (int i = 0; i < isRejected.length; i++) {
      isRejected[i] = RejectReport.isRejected(disposition.labels().name(i));
    }
    Setting why = wheel.defect();
    defects = why == null ? new Labels() : why.labels();
    defect = why == null ? null : why.categories();
  }

  /** Null where no disposition was recorded. */
  static @Nullable RejectCounts of(WheelRecord wheel, TurnIndex turns) {
    Setting disposition = wheel.disposition();
    IntColumn codes = disposition == null ? null : disposition.categories();
    if (disposition == null || codes == null) {
      return null;
    }
    boolean isAny = IntStream.range(0, codes.size()).anyMatch(row -> codes.get(row) >= 0);
    return !isAny ? null : new RejectCounts(wheel, turns, disposition, codes);
  }

  /** Names of the defects that were written down. */
  List<String> defects() {
    return defects.names();
  }

  /**
   * All of it.
   *
   * @param rows of the same wheel
   * @param spells that were found in it
   */
  RejectReport report(RejectRows rows, List<RejectReport.Spell> spells) {
    int molds = wheel.molds().size();
    int[] judged = new int[molds];
    int[] rejected = new int[molds];
    // One column more, for what was rejected and nobody wrote why.
    int[][] ofClass = new int[defects.size() + 1][molds];
    double[] kilograms = new double[defects.size() + 1];
    double[] weighed = new double[defects.size() + 1];
    Characteristic mass =
        wheel.characteristics().stream()
            .filter(one -> one.name().equals(Quantity.MASS))
            .findFirst()
            .orElse(null);
    for (int row = 0; row < wheel.rows(); row++) {
      int code = disposition.get(row);
      if (code < 0) {
        continue;
      }
      int mold = wheel.mold().get(row);
      judged[mold]++;
      if (isRejected[code]) {
        int why = why(row);
        rejected[mold]++;
        ofClass[why][mold]++;
        double kg = mass == null ? Double.NaN : mass.values().get(row);
        if (!Double.isNaN(kg)) {
          kilograms[why] += kg;
          weighed[why]++;
        }
      }
    }
    int all = IntStream.of(judged).sum();
    int bad = IntStream.of(rejected).sum();
    List<OfClass> classes = classes(ofClass, judged, kilograms, weighed, bad, all);
    Double tonnes = tonnes(kilograms, weighed, bad);
    Batches batches = rows.counted(rows.batches(), RejectRows.ANY);
    return new RejectReport(
        wheel.wheel(),
        share(bad, all),
        tonnes,
        classes,
        molds(ofClass, judged, rejected),
        groups(),
        charges(rows, batches),
        CharacteristicAudit.known(batches.shares().sigmaZ()),
        spells);
  }

  /** Index of what was written down; one beyond them where nothing was. */
  private int why(int row) {
    return defect == null || defect.get(row) < 0 ? defects.size() : defect.get(row);
  }

  private static Share share(long rejected, long of) {
    Proportion its = Proportion.of(rejected, of, CONFIDENCE);
    return new Share(rejected, of, its.value(), its.low(), its.high());
  }

  /** Of all classes; those without a mass weigh what the others do on average. */
  private static @Nullable Double tonnes(double[] kilograms, double[] weighed, int rejected) {
    double kg = 0;
    double n = 0;
    for (int i = 0; i < kilograms.length; i++) {
      kg += kilograms[i];
      n += weighed[i];
    }
    return n == 0 ? null : (Double) (kg / n * rejected / 1000);
  }

  private List<OfClass> classes(
      int[][] ofClass, int[] judged, double[] kilograms, double[] weighed, int bad, int all) {
    Integer[] order = new Integer[ofClass.length];
    int[] count = new int[ofClass.length];
    int known = 0;
    for (int i = 0; i < order.length; i++) {
      order[i] = i;
      count[i] = IntStream.of(ofClass[i]).sum();
      known += count[i] > 0 ? 1 : 0;
    }
    Arrays.sort(order, Comparator.comparingInt((Integer i) -> -count[i]).thenComparing(i -> i));
    List<OfClass> classes = new ArrayList<>();
    double together = 0;
    for (int i : order) {
      if (count[i] > 0) {
        together += count[i];
        classes.add(
            new OfClass(
                i < defects.size() ? defects.name(i) : "",
                count[i],
                (double) count[i] / bad,
                together / bad,
                weighed[i] == 0 ? null : (Double) (kilograms[i] / weighed[i] * count[i] / 1000),
                mostIn(ofClass[i], judged, count[i], all, known)));
      }
    }
    return classes;
  }

  /** The mold that has a class beyond chance, over all molds and classes that are asked. */
  private @Nullable String mostIn(int[] its, int[] judged, int count, int all, int classes) {
    String most = null;
    double least = ALPHA / (judged.length * (double) classes);
    for (int m = 0; m < its.length; m++) {
      double p = Shares.moreThanOthers(its[m], judged[m], count, all);
      if (p < least) {
        least = p;
        most = wheel.molds().name(m);
      }
    }
    return most;
  }

  private List<OfMold> molds(int[][] ofClass, int[] judged, int[] rejected) {
    int all = IntStream.of(judged).sum();
    int bad = IntStream.of(rejected).sum();
    Shares.Prior prior = Shares.prior(rejected, judged);
    List<OfMold> molds = new ArrayList<>();
    for (int m = 0; m < judged.length; m++) {
      if (judged[m] == 0) {
        continue;
      }
      int most = -1;
      for (int i = 0; i < defects.size(); i++) {
        most = ofClass[i][m] > 0 && (most < 0 || ofClass[i][m] > ofClass[most][m]) ? i : most;
      }
      molds.add(
          new OfMold(
              wheel.molds().name(m),
              share(rejected[m], judged[m]),
              prior.shrunk(rejected[m], judged[m]),
              Shares.moreThanOthers(rejected[m], judged[m], bad, all) < ALPHA / judged.length,
              most < 0 ? "" : defects.name(most)));
    }
    molds.sort(
        Comparator.comparingDouble((OfMold one) -> -one.share().value())
            .thenComparing(OfMold::mold, MoldOrder::compare));
    return molds;
  }

  private List<OfGroup> groups() {
    List<OfGroup> groups = new ArrayList<>();
    if (wheel.sides().size() > 0) {
      groups.addAll(groups("ladle", wheel.sides(), wheel.side()));
    }
    for (Setting setting : wheel.settings()) {
      IntColumn categories = setting.categories();
      if (setting.name().equals("crew") && categories != null) {
        groups.addAll(groups("crew", setting.labels(), categories));
      }
    }
    return groups;
  }

  private List<OfGroup> groups(String by, Labels labels, IntColumn codes) {
    Map<Integer, long[]> counts = new LinkedHashMap<>();
    for (int row = 0; row < wheel.rows(); row++) {
      int code = disposition.get(row);
      int group = codes.get(row);
      if (code >= 0 && group >= 0) {
        long[] its = counts.computeIfAbsent(group, any -> new long[2]);
        its[0] += isRejected[code] ? 1 : 0;
        its[1]++;
      }
    }
    List<OfGroup> groups = new ArrayList<>();
    counts.forEach(
        (group, its) -> groups.add(new OfGroup(by, labels.name(group), share(its[0], its[1]))));
    groups.sort(Comparator.comparing(OfGroup::name, MoldOrder::compare));
    return groups;
  }

  /** Start-up is rejected more often, and everybody knows: it is counted, and raises no signal. */
  RejectRows rows() {
    int[] why = new int[wheel.rows()];
    for (int row = 0; row < why.length; row++) {
      int code = disposition.get(row);
      boolean isJudged = code >= 0 && !turns.startUp()[row];
      why[row] = !isJudged ? -1 : isRejected[code] ? 1 + why(row) : 0;
    }
    return new RejectRows(wheel, turns, why, 0, why.length);
  }

  private static List<RejectReport.OfCharge> charges(RejectRows rows, Batches all) {
    Labels names = rows.charges();
    if (names == null) {
      return List.of();
    }
    List<RejectReport.OfCharge> charges = new ArrayList<>();
    for (int b = 0; b < all.casts().length; b++) {
      if (all.casts()[b] > 0) {
        int code = rows.charge(all.begins()[b]);
        charges.add(
            new RejectReport.OfCharge(
                code < 0 ? "" : names.name(code),
                Instant.ofEpochMilli(rows.wheel().castAtMillis().get(all.begins()[b])),
                all.hits()[b],
                all.casts()[b],
                CharacteristicAudit.known(all.shares().upper(all.casts()[b]))));
      }
    }
    return charges;
  }
}
