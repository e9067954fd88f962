package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
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

/** Counts what was rejected of a wheel's anodes: by class, by mold, by ladle side and crew. */
final class RejectAudit {
  private static final double CONFIDENCE = 0.95;

  /** Chance that any mold is said to stand out where none does. A choice, as for molds' offsets. */
  private static final double ALPHA = 0.05;

  /** What a log calls an anode that goes back; whatever else it writes is not counted as one. */
  private static final Set<String> REJECTED = Set.of("rejected", "reject", "remelt", "scrap");

  private final WheelRecord wheel;
  private final IntColumn disposition;
  private final Labels dispositions;

  private RejectAudit(WheelRecord wheel, IntColumn disposition, Labels dispositions) {
    this.wheel = wheel;
    this.disposition = disposition;
    this.dispositions = dispositions;
  }

  /** Null where no disposition was recorded. */
  static @Nullable RejectReport of(WheelRecord wheel) {
    Setting setting = wheel.disposition();
    IntColumn codes = setting == null ? null : setting.categories();
    if (setting == null || codes == null) {
      return null;
    }
    RejectReport report = new RejectAudit(wheel, codes, setting.labels()).report();
    return report.all().of() == 0 ? null : report;
  }

  private RejectReport report() {
    boolean[] isRejected = new boolean[dispositions.size()];
    for (int i = 0; i < isRejected.length; i++) {
      isRejected[i] = REJECTED.contains(dispositions.name(i).strip().toLowerCase(Locale.ROOT));
    }
    Labels defects = wheel.defect() == null ? new Labels() : wheel.defect().labels();
    IntColumn defect = wheel.defect() == null ? null : wheel.defect().categories();
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
        int why = defect == null || defect.get(row) < 0 ? defects.size() : defect.get(row);
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
    List<OfClass> classes = classes(defects, ofClass, judged, kilograms, weighed, bad, all);
    Double tonnes = tonnes(kilograms, weighed, bad);
    return new RejectReport(
        wheel.wheel(),
        share(bad, all),
        tonnes,
        classes,
        molds(defects, ofClass, judged, rejected),
        groups(isRejected));
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
      Labels defects,
      int[][] ofClass,
      int[] judged,
      double[] kilograms,
      double[] weighed,
      int bad,
      int all) {
    Integer[] order = new Integer[ofClass.length];
    int[] count = new int[ofClass.length];
    int known = 0;
    for (int i = 0; i < order.length; i++) {
      order[i] = i;
      count[i] = IntStream.of(ofClass[i]).sum();
      known += count[i] > 0 ? 1 : 0;
    }
    java.util.Arrays.sort(
        order, Comparator.comparingInt((Integer i) -> -count[i]).thenComparing(i -> i));
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

  private List<OfMold> molds(Labels defects, int[][] ofClass, int[] judged, int[] rejected) {
    int all = IntStream.of(judged).sum();
    int bad = IntStream.of(rejected).sum();
    double[] shrunk = Shares.shrunk(rejected, judged);
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
              shrunk[m],
              Shares.moreThanOthers(rejected[m], judged[m], bad, all) < ALPHA / judged.length,
              most < 0 ? "" : defects.name(most)));
    }
    molds.sort(
        Comparator.comparingDouble((OfMold one) -> -one.share().value())
            .thenComparing(OfMold::mold, MoldOrder::compare));
    return molds;
  }

  private List<OfGroup> groups(boolean[] isRejected) {
    List<OfGroup> groups = new ArrayList<>();
    if (wheel.sides().size() > 0) {
      groups.addAll(groups("ladle", wheel.sides(), wheel.side(), isRejected));
    }
    for (Setting setting : wheel.settings()) {
      IntColumn categories = setting.categories();
      if (setting.name().equals("crew") && categories != null) {
        groups.addAll(groups("crew", setting.labels(), categories, isRejected));
      }
    }
    return groups;
  }

  private List<OfGroup> groups(String by, Labels labels, IntColumn codes, boolean[] isRejected) {
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
}
