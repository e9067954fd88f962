package org.evenpour.audit;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.Setting;
import org.evenpour.casting.Specification;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.IntColumn;
import org.evenpour.column.Labels;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.CapabilityInFull.Group;
import org.evenpour.stats.Capability;
import org.evenpour.stats.ChartConstants;
import org.evenpour.stats.Moments;
import org.evenpour.stats.MovingRange;
import org.evenpour.stats.Resemblance;
import org.jspecify.annotations.Nullable;

/** The same anodes by ladle side, charge and crew. */
final class Groups {
  /** A group of fewer anodes says little of itself: a choice, some two turns of a wheel. */
  static final int FEW = 50;

  /** Of a kind with more groups only the newest are told: a choice, some two months of charges. */
  static final int MOST = 100;

  private final WheelRecord record;
  private final TurnIndex turns;
  private final int[] mold;
  private final double[] value;
  private final Specification specification;
  private final Resemblance resemblance;
  private final List<Group> groups = new ArrayList<>();

  private Groups(
      WheelRecord record,
      TurnIndex turns,
      int[] mold,
      double[] value,
      Specification specification,
      Resemblance resemblance) {
    this.record = record;
    this.turns = turns;
    this.mold = mold;
    this.value = value;
    this.specification = specification;
    this.resemblance = resemblance;
  }

  /** The newest {@value #MOST} groups of each kind, in the order in which they first came. */
  static List<Group> of(
      WheelRecord record,
      TurnIndex turns,
      int[] mold,
      double[] value,
      Specification specification,
      Resemblance resemblance) {
    return new Groups(record, turns, mold, value, specification, resemblance).all();
  }

  private List<Group> all() {
    if (record.sides().size() > 0) {
      add("ladle", record.sides(), record.side());
    }
    for (String by : List.of("charge", "crew")) {
      for (Setting setting : record.settings()) {
        IntColumn its = setting.categories();
        if (setting.name().equals(by) && its != null) {
          add(by, setting.labels(), its);
        }
      }
    }
    return groups;
  }

  /**
   * Sigma within is the mean moving range / d2, the ranges those between one cast and the next in
   * the same mold and the same group.
   */
  private void add(String by, Labels labels, IntColumn of) {
    int k = labels.size();
    int molds = record.molds().size();
    Moments[] moments = new Moments[k];
    long[] outside = new long[k];
    double[] ranges = new double[k];
    long[] rangeCount = new long[k];
    long[] series = new long[k];
    long[] itsTurns = new long[k];
    int[] lastTurn = new int[k];
    java.util.Arrays.fill(lastTurn, -1);
    double[] last = new double[molds];
    int[] lastGroup = new int[molds];
    java.util.Arrays.fill(lastGroup, -1);
    java.util.BitSet seen = new java.util.BitSet();
    int newest = Math.max(0, k - MOST);
    for (int g = newest; g < k; g++) {
      moments[g] = new Moments();
    }
    int from = 0;
    // Before the first cast of a group that is told nothing is to be summed.
    while (from < value.length && of.get(from) < newest) {
      from++;
    }
    for (int i = from; i < value.length; i++) {
      int g = of.get(i);
      double x = value[i];
      if (g < 0 || Double.isNaN(x)) {
        continue;
      }
      int m = mold[i];
      // Of a group that is not told only that a cast was its: ranges end there.
      if (g < newest) {
        lastGroup[m] = g;
        continue;
      }
      moments[g].add(x);
      if (lastTurn[g] != turns.ofRow()[i]) {
        lastTurn[g] = turns.ofRow()[i];
        itsTurns[g]++;
      }
      outside[g] += specification.excludes(x) ? 1 : 0;
      // Across two groups, or two molds, a range would hold what they differ by.
      if (lastGroup[m] == g) {
        ranges[g] += Math.abs(x - last[m]);
        rangeCount[g]++;
        int key = Math.toIntExact((long) g * molds + m);
        if (!seen.get(key)) {
          seen.set(key);
          series[g]++;
        }
      }
      last[m] = x;
      lastGroup[m] = g;
    }
    for (int g = newest; g < k; g++) {
      if (moments[g].count() > 0) {
        double sigma =
            rangeCount[g] == 0 ? Double.NaN : ranges[g] / rangeCount[g] / ChartConstants.d2(2);
        // Degrees of freedom of the molds' ranges add up, all taken to be of average length.
        double freedom =
            series[g] == 0
                ? 0
                : series[g]
                    * MovingRange.degreesOfFreedom(
                        1 + Math.round((double) rangeCount[g] / series[g]));
        groups.add(group(by, labels.name(g), moments[g], itsTurns[g], outside[g], sigma, freedom));
      }
    }
  }

  private Group group(
      String by,
      String name,
      Moments moments,
      long itsTurns,
      long outside,
      double sigma,
      double freedom) {
    boolean specified = specification.hasLimits();
    Capability capability =
        specified
            ? Capability.of(
                moments.count(),
                moments.mean(),
                sigma,
                freedom,
                moments.sd(),
                specification.lower(),
                specification.target(),
                specification.upper(),
                resemblance.of(moments.count(), itsTurns, moments.sd()))
            : null;
    return new Group(
        by,
        name,
        moments.count(),
        moments.mean(),
        CharacteristicAudit.known(moments.sd()),
        capability == null ? null : estimate(capability.cpk()),
        capability == null ? null : estimate(capability.ppk()),
        specified ? (Long) outside : null,
        moments.count() < FEW);
  }

  private static @Nullable Estimate estimate(Capability.@Nullable Estimate e) {
    return CharacteristicAudit.estimate(e);
  }
}
