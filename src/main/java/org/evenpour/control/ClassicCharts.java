package org.evenpour.control;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.stats.Limits;
import org.evenpour.stats.RunTest;
import org.evenpour.stats.RunTests;

/**
 * The individuals chart of each mold's raw series, as handbooks have it, with all eight run tests:
 * kept beside the engine's own charts for comparison. A disturbance of the whole wheel rings in
 * every one of them. Owned by one thread.
 */
public final class ClassicCharts {
  private final List<RunTests> molds = new ArrayList<>();

  /**
   * @param limits by mold index
   */
  public ClassicCharts(List<Limits> limits) {
    for (Limits each : limits) {
      molds.add(new RunTests(each.center(), each.sigma()));
    }
  }

  /**
   * Takes in the next anode of a mold; NaN = not measured. Returns a bit for each run test that it
   * completes.
   */
  public int accept(int mold, double value) {
    return mold < molds.size() ? molds.get(mold).accept(value) : 0;
  }

  /** How many points completed a test in one mold. */
  public long count(int mold, RunTest test) {
    return molds.get(mold).count(test);
  }
}
