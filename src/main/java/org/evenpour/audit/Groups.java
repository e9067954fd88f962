package org.evenpour.audit;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.audit.AuditReport.Estimate;
import org.evenpour.audit.CapabilityInFull.Group;
import org.evenpour.casting.IntColumn;
import org.evenpour.casting.Labels;
import org.evenpour.casting.Setting;
import org.evenpour.casting.Specification;
import org.evenpour.casting.WheelRecord;
import org.evenpour.stats.Capability;
import org.evenpour.stats.ChartConstants;
import org.evenpour.stats.Moments;
import org.evenpour.stats.MovingRange;
import org.jspecify.annotations.Nullable;

/** The same anodes by ladle side, charge and crew. */
final class Groups {
  /** A group of fewer anodes says little of itself: a choice, some two turns of a wheel. */
  static final int FEW = 50;

  /** Of a kind with more groups only the newest are told: a choice, some two months of charges. */
  static final int MOST = 100;

  private Groups() {}

  /** The newest {@value #MOST} groups of each kind, in the order in which they first came. */
  static List<Group> of(
      WheelRecord record, int[] mold, double[] value, Specification specification) {
    List<Group> groups = new ArrayList<>();
    if (record.sides().size() > 0) {
      add(groups, "ladle", record.sides(), record.side(), record, mold, value, specification);
    }
    for (String by : List.of("charge", "crew")) {
      for (Setting setting : record.settings()) {
        IntColumn its = setting.categories();
        if (setting.name().equals(by) && its != null) {
          add(groups, by, setting.labels(), its, record, mold, value, specification);
        }
      }
    }
    return groups;
  }

  /**
   * Sigma within is the mean moving range / d2, the ranges those between one cast and the next in
   * the same mold and the same group.
   */
  private static void add(
      List<Group> groups,
      String by,
      Labels labels,
      IntColumn of,
      WheelRecord record,
      int[] mold,
      double[] value,
      Specification specification) {
    int k = labels.size();
    int molds = record.molds().size();
    Moments[] moments = new Moments[k];
    long[] outside = new long[k];
    double[] ranges = new double[k];
    long[] rangeCount = new long[k];
    long[] series = new long[k];
    double[] last = new double[molds];
    int[] lastGroup = new int[molds];
    java.util.Arrays.fill(lastGroup, -1);
    java.util.BitSet seen = new java.util.BitSet();
    for (int g = 0; g < k; g++) {
      moments[g] = new Moments();
    }
    for (int i = 0; i < value.length; i++) {
      int g = of.get(i);
      double x = value[i];
      if (g < 0 || Double.isNaN(x)) {
        continue;
      }
      moments[g].add(x);
      outside[g] += specification.excludes(x) ? 1 : 0;
      int m = mold[i];
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
    for (int g = Math.max(0, k - MOST); g < k; g++) {
      if (moments[g].count() > 0) {
        double sigma =
            rangeCount[g] == 0 ? Double.NaN : ranges[g] / rangeCount[g] / ChartConstants.d2(2);
        double freedom =
            series[g] == 0
                ? 0
                : series[g]
                    * MovingRange.degreesOfFreedom(
                        1 + Math.round((double) rangeCount[g] / series[g]));
        groups.add(
            group(by, labels.name(g), moments[g], outside[g], sigma, freedom, specification));
      }
    }
  }

  private static Group group(
      String by,
      String name,
      Moments moments,
      long outside,
      double sigma,
      double freedom,
      Specification specification) {
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
                specification.upper())
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
