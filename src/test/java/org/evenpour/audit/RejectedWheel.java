package org.evenpour.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.evenpour.casting.Setting;
import org.evenpour.casting.SettingProfile;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelProfile;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.column.IntColumn;
import org.evenpour.column.Labels;
import org.evenpour.column.LongColumn;
import org.evenpour.column.Pages;
import org.hipparchus.random.RandomDataGenerator;

/** Wheels of nothing but accepted and rejected anodes, drawn from shares that a test sets. */
final class RejectedWheel {
  static final int MOLDS = 26;
  static final int TURNS_PER_CHARGE = 16;

  /** Parts of all rejects that each defect has. */
  static final double[] PARTS = {0.35, 0.25, 0.2, 0.15, 0.05};

  private static final long TURN_MILLIS = 2_400_000;

  /** How many times likelier a defect is at a place than usual. */
  @FunctionalInterface
  interface Fault {
    double times(int turn, int mold, int defect);
  }

  private RejectedWheel() {}

  /**
   * @param share rejected on average
   * @param molds coefficient of variation between molds
   * @param kappa squared coefficient of variation between charges
   * @param settings values of each setting by turn, the same for all molds
   */
  static WheelRecord of(
      long seed,
      int turns,
      double share,
      double molds,
      double kappa,
      Fault fault,
      double[]... settings) {
    RandomDataGenerator gamma = new RandomDataGenerator(seed);
    SplittableRandom random = new SplittableRandom(seed);
    Pages pages = Pages.ofMemory();
    Labels names = new Labels();
    double[] own = new double[MOLDS];
    for (int m = 0; m < MOLDS; m++) {
      names.index(Integer.toString(m + 1));
      own[m] = share * (molds > 0 ? gamma.nextGamma(1 / (molds * molds), molds * molds) : 1);
    }
    LongColumn at = new LongColumn(pages);
    LongColumn line = new LongColumn(pages);
    IntColumn turn = new IntColumn(pages);
    IntColumn mold = new IntColumn(pages);
    IntColumn none = new IntColumn(pages);
    IntColumn charge = new IntColumn(pages);
    IntColumn disposition = new IntColumn(pages);
    IntColumn defect = new IntColumn(pages);
    Labels charges = new Labels();
    Labels dispositions = new Labels();
    dispositions.index("accepted");
    dispositions.index("rejected");
    Labels defects = new Labels();
    List<DoubleColumn> columns = new ArrayList<>();
    for (int i = 0; i < PARTS.length; i++) {
      defects.index("defect" + i);
    }
    for (double[] any : settings) {
      columns.add(new DoubleColumn(pages));
    }
    double ofCharge = 1;
    for (int t = 0; t < turns; t++) {
      if (t % TURNS_PER_CHARGE == 0) {
        ofCharge = kappa > 0 ? gamma.nextGamma(1 / kappa, kappa) : 1;
        charges.index("C" + t / TURNS_PER_CHARGE);
      }
      for (int m = 0; m < MOLDS; m++) {
        at.add(1_700_000_000_000L + t * TURN_MILLIS + m * (TURN_MILLIS / MOLDS));
        line.add(at.size() + 1);
        turn.add(t + 1);
        mold.add(m);
        none.add(-1);
        charge.add(charges.size() - 1);
        for (int i = 0; i < settings.length; i++) {
          columns.get(i).add(settings[i][t]);
        }
        double u = random.nextDouble();
        int why = -1;
        double sum = 0;
        for (int d = 0; d < PARTS.length && why < 0; d++) {
          sum += own[m] * ofCharge * PARTS[d] * fault.times(t, m, d);
          why = u < sum ? d : -1;
        }
        disposition.add(why < 0 ? 0 : 1);
        defect.add(why);
      }
    }
    List<Setting> all = new ArrayList<>();
    all.add(new Setting("charge", Unit.NONE, SettingProfile.NONE, null, charge, charges));
    for (int i = 0; i < settings.length; i++) {
      all.add(
          new Setting(
              "setting" + i, Unit.NONE, SettingProfile.NONE, columns.get(i), null, new Labels()));
    }
    return new WheelRecord(
        "T1",
        WheelProfile.DEFAULT,
        names,
        new Labels(),
        new Labels(),
        at,
        turn,
        mold,
        none,
        none,
        line,
        List.of(),
        List.of(),
        all,
        new Setting("disposition", Unit.NONE, SettingProfile.NONE, null, disposition, dispositions),
        new Setting("defect", Unit.NONE, SettingProfile.NONE, null, defect, defects),
        null);
  }
}
