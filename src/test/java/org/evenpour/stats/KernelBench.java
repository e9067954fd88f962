package org.evenpour.stats;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;

/**
 * How many anodes a second one thread takes through the sums, the limits and the eight run tests of
 * their molds, and what it allocates meanwhile: {@code KernelBench [ANODES]}.
 */
final class KernelBench {
  private static final int MOLDS = 26;

  private KernelBench() {}

  public static void main(String[] arguments) {
    int n = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 5_000_000;
    Random random = new Random(3);
    double[] value = random.doubles(n).map(u -> Math.round(3900 + 20 * u) / 10.0).toArray();
    int[] mold = new int[n];
    Arrays.setAll(mold, i -> i % MOLDS);
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    // The last of five counts: before it the runtime has not compiled all.
    for (int time = 0; time < 5; time++) {
      long allocated = threads.getCurrentThreadAllocatedBytes();
      long begin = threads.getCurrentThreadCpuTime();
      MovingRange[] ranges = new MovingRange[MOLDS];
      Arrays.setAll(ranges, m -> new MovingRange());
      Moments all = new Moments();
      for (int i = 0; i < n; i++) {
        all.add(value[i]);
        ranges[mold[i]].add(value[i]);
      }
      long summed = threads.getCurrentThreadCpuTime();
      RunTests[] tests = new RunTests[MOLDS];
      for (int m = 0; m < MOLDS; m++) {
        Limits limits = ranges[m].limits();
        tests[m] = new RunTests(limits.center(), limits.sigma());
      }
      long fired = 0;
      for (int i = 0; i < n; i++) {
        fired += Integer.bitCount(tests[mold[i]].accept(value[i]));
      }
      long tested = threads.getCurrentThreadCpuTime();
      double bytes = threads.getCurrentThreadAllocatedBytes() - allocated;
      System.err.printf(
          Locale.ROOT,
          "%,d anodes, %,d tests fired, s.d. %.3f: sums %.1f ns, tests %.1f ns an anode; %.1f million"
              + " anodes a second; %.4f bytes allocated an anode%n",
          n,
          fired,
          all.sd(),
          (summed - begin) / (double) n,
          (tested - summed) / (double) n,
          n * 1e3 / (tested - begin),
          bytes / n);
    }
  }
}
