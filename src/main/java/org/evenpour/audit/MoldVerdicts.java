package org.evenpour.audit;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.EventKind;
import org.evenpour.casting.MoldOrder;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Scope;
import org.evenpour.casting.Setting;
import org.evenpour.casting.Specification;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.control.MoldChange;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.MoldVerdict;
import org.evenpour.findings.MoldVerdict.Reason;
import org.evenpour.findings.MoldVerdict.Standing;
import org.evenpour.findings.MoldVerdict.ThickSide;
import org.evenpour.findings.MoldVerdict.Verdict;
import org.evenpour.findings.RejectReport;
import org.evenpour.stats.Robust;
import org.jspecify.annotations.Nullable;

/**
 * What to do with each mold of a wheel: rules asked in the order of {@link Reason}, the first that
 * applies decides. All thresholds are choices, and documented as such.
 */
final class MoldVerdicts {
  /**
   * Published of one plant's molds: on average they last about 550 to 750 t and are scrapped for a
   * damaged cavity or 12 to 14 mm of warp (US patent 4,741,377, 1988).
   */
  static final double LIFE_FROM_TONNES = 550;

  static final double LIFE_TO_TONNES = 750;

  /** A trend that meets the tolerance within so many casts: about a week's work of a mold. */
  static final double SOON_CASTS = 250;

  /** Fewer casts, or days from first to last, tell no wear from what a day brings. A choice. */
  static final int WEAR_CASTS = 100;

  static final int WEAR_DAYS = 3;

  /**
   * In a record that is short for wear, a mold is leveled only where its Ppk is below this beyond
   * doubt, for what a day's wash and spray do to a mold has no time to even out: one anode in
   * twenty outside even then. A choice.
   */
  static final double SHORT_PPK = 2.0 / 3;

  /** A line is carried on by as many times the casts that it was seen over, and no further. */
  static final double CARRIED_TO_REPLACE = 1;

  static final double CARRIED_TO_WATCH = 3;

  /** A mold's setting stands apart from so many robust s.d. of the molds' settings on. A choice. */
  static final double APART = 4;

  /** A trend that meets it later than any mold lives is no news: 750 t in anodes of 400 kg. */
  static final double LATE_CASTS = 1875;

  /** An offset matters from this share of the room that the wheel's center leaves on its side. */
  static final double SHARE_OF_ROOM = 0.25;

  /** A mold's scatter is its own from so many times the molds' median. */
  static final double OWN_SCATTER = 1.5;

  /** The log's own count of casts on the mold, if it keeps one. */
  private static final Set<String> COUNTERS = Set.of("casts_on_mold", "mold_casts");

  private final WheelRecord record;
  private final MoldLives lives;
  private final List<Signal> signals;
  private final @Nullable RejectReport rejects;
  private final Map<String, List<@Nullable Standing>> standings = new LinkedHashMap<>();
  private final Map<String, Specification> specifications = new LinkedHashMap<>();
  private final Map<String, double[]> scatter = new LinkedHashMap<>();
  private final @Nullable String[] apart;
  private final boolean[] isLong;
  private final List<int[]> rows;

  private MoldVerdicts(
      WheelRecord record, MoldLives lives, List<Signal> signals, @Nullable RejectReport rejects) {
    this.record = record;
    this.lives = lives;
    this.signals = signals;
    this.rejects = rejects;
    this.rows = MoldStandings.rowsOf(lives.life(), lives.lives());
    this.apart = apart(record, lives, rows);
    this.isLong = new boolean[record.molds().size()];
    for (int m = 0; m < isLong.length; m++) {
      isLong[m] = lives.latest()[m] >= 0 && isLong(record, lives, rows.get(lives.latest()[m]));
    }
  }

  /** Whether a life was seen long enough to tell wear. */
  private static boolean isLong(WheelRecord record, MoldLives lives, int[] rows) {
    long first = record.castAtMillis().get(lives.from() + rows[0]);
    long last = record.castAtMillis().get(lives.from() + rows[rows.length - 1]);
    // Three days in a row: from some hour of the first to some hour of the last.
    return rows.length >= WEAR_CASTS
        && Duration.ofMillis(last - first).compareTo(Duration.ofDays(WEAR_DAYS - 1)) > 0;
  }

  /**
   * The recorded setting that stands furthest apart at each mold, by the median of its life against
   * the other molds' medians; null where none does. Medians, for what lasted less than half of the
   * record is no reason for where the mold stands in it.
   */
  private static @Nullable String[] apart(WheelRecord record, MoldLives lives, List<int[]> rows) {
    int molds = record.molds().size();
    @Nullable String[] apart = new @Nullable String[molds];
    double[] furthest = new double[molds];
    Arrays.fill(furthest, APART);
    for (Setting setting : record.settings()) {
      DoubleColumn numbers = setting.numbers();
      if (numbers == null || COUNTERS.contains(setting.name())) {
        continue;
      }
      double[] medians = new double[molds];
      for (int m = 0; m < molds; m++) {
        int life = lives.latest()[m];
        medians[m] =
            life < 0
                ? Double.NaN
                : Robust.median(
                    Arrays.stream(rows.get(life))
                        .mapToDouble(row -> numbers.get(lives.from() + row))
                        .filter(value -> !Double.isNaN(value))
                        .toArray());
      }
      double[] known = Arrays.stream(medians).filter(value -> !Double.isNaN(value)).toArray();
      double middle = Robust.median(known);
      double scatter = Robust.mad(known);
      for (int m = 0; m < molds && scatter > 0; m++) {
        double far = Math.abs(medians[m] - middle) / scatter;
        if (far > furthest[m]) {
          furthest[m] = far;
          apart[m] = setting.name();
        }
      }
    }
    return apart;
  }

  /**
   * The verdicts of a wheel, the gravest first.
   *
   * @param record without characteristics that its rows never have
   * @param events at this wheel, in the order of time
   * @param signals of the whole audit
   */
  static List<MoldVerdict> of(
      WheelRecord record,
      TurnIndex turns,
      List<CastingEvent> events,
      List<Signal> signals,
      @Nullable RejectReport rejects) {
    Set<MoldChange> dressings = new HashSet<>();
    List<MoldChange> changes = new ArrayList<>();
    for (CastingEvent event : events) {
      // Event by event: a change does not tell any more whether it was a dressing.
      List<MoldChange> one = Audit.moldChanges(List.of(event), record);
      changes.addAll(one);
      if (!event.kind().equals(EventKind.MOLD_CHANGED)) {
        dressings.addAll(one);
      }
    }
    MoldVerdicts verdicts =
        new MoldVerdicts(record, MoldLives.of(record, turns, changes, dressings), signals, rejects);
    return verdicts.all();
  }

  private List<MoldVerdict> all() {
    for (Characteristic one : record.characteristics()) {
      if (!one.name().equals(Quantity.MASS_DEVIATION)) {
        double[] values = new double[record.rows() - lives.from()];
        for (int i = 0; i < values.length; i++) {
          values[i] = one.values().get(lives.from() + i);
        }
        add(one.name(), values, one.specification());
      }
    }
    double[] area = PlanArea.of(record, lives.from());
    if (area != null) {
      add(PlanArea.NAME, area, Specification.NONE);
    }
    List<@Nullable ThickSide> sides = ThickSides.of(record, lives);
    List<MoldVerdict> verdicts = new ArrayList<>();
    for (int m = 0; m < record.molds().size(); m++) {
      if (lives.latest()[m] >= 0) {
        verdicts.add(verdict(m, sides.get(m)));
      }
    }
    verdicts.sort(
        Comparator.comparingInt((MoldVerdict v) -> v.verdict() == null ? -1 : v.verdict().ordinal())
            .reversed()
            .thenComparing(MoldVerdict::reason)
            .thenComparing(MoldVerdict::mold, MoldOrder::compare));
    return verdicts;
  }

  private void add(String name, double[] values, Specification specification) {
    List<@Nullable Standing> its = MoldStandings.of(name, values, lives, specification);
    standings.put(name, its);
    specifications.put(name, specification);
    scatter.put(name, scatter(values));
  }

  /** The robust scatter of each mold's life: one wild anode is no sign of the mold. */
  private double[] scatter(double[] values) {
    double[] scatter = new double[record.molds().size()];
    for (int m = 0; m < scatter.length; m++) {
      int life = lives.latest()[m];
      double[] its =
          life < 0
              ? new double[0]
              : Arrays.stream(rows.get(life))
                  .mapToDouble(row -> values[row])
                  .filter(value -> !Double.isNaN(value))
                  .toArray();
      scatter[m] = its.length < MoldStandings.FEWEST ? Double.NaN : Robust.biweightScale(its);
    }
    return scatter;
  }

  private MoldVerdict verdict(int m, @Nullable ThickSide side) {
    List<Standing> its = new ArrayList<>();
    for (List<@Nullable Standing> each : standings.values()) {
      Standing one = each.get(m);
      if (one != null) {
        its.add(one);
      }
    }
    String mold = record.molds().name(m);
    Long onMold = onMold(m);
    Double tonnes = tonnes(onMold, its);
    Found found = new Rules(m, its, mold, onMold, tonnes, lives.casts()[m]).ask();
    return new MoldVerdict(
        record.wheel(),
        mold,
        serial(m),
        found.verdict(),
        found.reason(),
        found.characteristic(),
        found.signal(),
        found.setting(),
        lives.casts()[m],
        isLong[m],
        lives.onMold()[m] >= 0,
        onMold,
        tonnes,
        side,
        its);
  }

  private @Nullable String serial(int m) {
    for (int i = record.rows() - 1; i >= lives.from() && record.serials().size() > 0; i--) {
      if (record.mold().get(i) == m && record.serial().get(i) >= 0) {
        return record.serials().name(record.serial().get(i));
      }
    }
    return null;
  }

  /** The log's own count before what can be counted here; null where neither tells. */
  private @Nullable Long onMold(int m) {
    for (Setting setting : record.settings()) {
      DoubleColumn numbers = setting.numbers();
      if (numbers != null && COUNTERS.contains(setting.name())) {
        for (int i = record.rows() - 1; i >= lives.from(); i--) {
          double count = record.mold().get(i) == m ? numbers.get(i) : Double.NaN;
          if (count >= 0) {
            return Math.round(count);
          }
        }
      }
    }
    return lives.onMold()[m] >= 0 ? (Long) lives.onMold()[m] : null;
  }

  private static @Nullable Double tonnes(@Nullable Long casts, List<Standing> its) {
    for (Standing one : its) {
      if (one.characteristic().equals(Quantity.MASS) && casts != null) {
        return casts * one.level() / 1000;
      }
    }
    return null;
  }

  private record Found(
      @Nullable Verdict verdict,
      Reason reason,
      @Nullable String characteristic,
      @Nullable String signal,
      @Nullable String setting) {

    static Found by(Verdict verdict, Reason reason, @Nullable String characteristic) {
      return new Found(verdict, reason, characteristic, null, null);
    }
  }

  /** The rules for one mold. */
  private final class Rules {
    private final int number;
    private final List<Standing> its;
    private final String mold;
    private final @Nullable Long onMold;
    private final @Nullable Double tonnes;
    private final long casts;

    Rules(
        int number,
        List<Standing> its,
        String mold,
        @Nullable Long onMold,
        @Nullable Double tonnes,
        long casts) {
      this.number = number;
      this.its = its;
      this.mold = mold;
      this.onMold = onMold;
      this.tonnes = tonnes;
      this.casts = casts;
    }

    Found ask() {
      Found found = life();
      found = found == null ? soon() : found;
      found = found == null ? scatters() : found;
      found = found == null ? few() : found;
      found = found == null ? dress() : found;
      found = found == null ? step() : found;
      found = found == null ? late() : found;
      found = found == null ? signal() : found;
      found = found == null ? rejects() : found;
      found = found == null ? near() : found;
      return found == null ? rest() : found;
    }

    private @Nullable Found life() {
      if (tonnes == null || onMold == null || tonnes < LIFE_FROM_TONNES) {
        return null;
      }
      // The published life is a span: at its beginning only what shows wear is at its end.
      boolean worn = tonnes >= LIFE_TO_TONNES || late() != null;
      return Found.by(worn ? Verdict.REPLACE : Verdict.WATCH, Reason.LIFE, null);
    }

    private @Nullable Found soon() {
      return wears(Math.min(SOON_CASTS, CARRIED_TO_REPLACE * casts), Verdict.REPLACE, Reason.WEARS);
    }

    private @Nullable Found late() {
      return wears(Math.min(LATE_CASTS, CARRIED_TO_WATCH * casts), Verdict.WATCH, Reason.TREND);
    }

    private @Nullable Found wears(double within, Verdict verdict, Reason reason) {
      if (!isLong[number]) {
        return null;
      }
      Standing soonest = null;
      double least = within;
      for (Standing one : its) {
        MoldVerdict.Trend trend = one.trend();
        Double left = trend == null ? null : trend.castsLeft();
        if (left != null && left <= least && isCavity(one)) {
          least = left;
          soonest = one;
        }
      }
      return soonest == null ? null : Found.by(verdict, reason, soonest.characteristic());
    }

    /** Mass is fixed by the weighing, and no sign of the mold. */
    private static boolean isCavity(Standing one) {
      return !one.characteristic().equals(Quantity.MASS);
    }

    private @Nullable Found scatters() {
      for (Standing one : its) {
        Specification spec = specification(one);
        double[] all = scatter.getOrDefault(one.characteristic(), new double[0]);
        Double lower = spec.lower();
        Double upper = spec.upper();
        // Without both limits there is no width that a scatter could fill.
        if (lower == null || upper == null || !isCavity(one) || number >= all.length) {
          continue;
        }
        double sd = all[number];
        // The median, so that the few molds that scatter do not set what is usual.
        double usual = Robust.median(Arrays.stream(all).filter(x -> !Double.isNaN(x)).toArray());
        // below two thirds one anode in twenty lies outside even at the center
        if (upper - lower < 6 * sd * 2 / 3 && sd > OWN_SCATTER * usual) {
          return Found.by(Verdict.REPLACE, Reason.SCATTERS, one.characteristic());
        }
      }
      return null;
    }

    private @Nullable Found few() {
      return casts < MoldStandings.FEWEST ? Found.by(Verdict.WATCH, Reason.FEW, null) : null;
    }

    private @Nullable Found dress() {
      Found found = off();
      return found == null || found.verdict() != Verdict.LEVEL ? found : orSetting(found);
    }

    /** What is sprayed or washed unlike the others stands off for that, whatever its cavity is. */
    private Found orSetting(Found found) {
      return apart[number] == null
          ? found
          : new Found(Verdict.WATCH, Reason.SETTING, found.characteristic(), null, apart[number]);
    }

    private @Nullable Found off() {
      Standing wedge = named(Quantity.WEDGE);
      // Less wedge than other molds have is no fault.
      if (wedge != null && wedge.offset() > 0 && matters(wedge) && isShort(wedge, true)) {
        return Found.by(Verdict.LEVEL, Reason.WEDGE, Quantity.WEDGE);
      }
      Standing thickness = named(Quantity.THICKNESS);
      if (thickness != null && matters(thickness) && isShort(thickness, true)) {
        return byThickness(thickness);
      }
      return null;
    }

    /** Whose is an offset of thickness: the cavity's or the pour's. */
    private Found byThickness(Standing thickness) {
      Standing area = named(PlanArea.NAME);
      if (area == null) {
        return Found.by(Verdict.LEVEL, Reason.THICKNESS, thickness.characteristic());
      }
      // an offset of thickness of so many per cent is the cavity's if the area answers for half
      double shareOfArea =
          -(area.offset() / area.level()) / (thickness.offset() / thickness.level());
      // Beyond chance as well, for half of an offset may be the area's noise.
      return area.standsOut() && shareOfArea >= 0.5
          ? Found.by(Verdict.LEVEL, Reason.CAVITY, thickness.characteristic())
          : Found.by(Verdict.WATCH, Reason.POUR, thickness.characteristic());
    }

    private @Nullable Found step() {
      for (Standing one : its) {
        AuditReport.Estimate step = one.step();
        Double low = step == null ? null : step.low();
        Double high = step == null ? null : step.high();
        if (step != null
            && low != null
            && high != null
            && (low > 0 || high < 0)
            && isLarge(one, step.value())) {
          return Found.by(Verdict.WATCH, Reason.STEP, one.characteristic());
        }
      }
      return null;
    }

    private @Nullable Found signal() {
      return signals.stream()
          .filter(s -> s.open() && s.scope() == Scope.MOLD)
          .filter(s -> s.wheel().equals(record.wheel()) && mold.equals(s.mold()))
          .max(Comparator.comparingDouble(s -> Math.abs(s.sizeSigma())))
          .map(s -> new Found(Verdict.WATCH, Reason.SIGNAL, s.characteristic(), s.id(), null))
          .orElse(null);
    }

    private @Nullable Found rejects() {
      RejectReport rejected = rejects;
      if (rejected == null) {
        return null;
      }
      RejectReport.OfMold its = rejected.of(mold);
      boolean isMore = rejected.holding(mold) != null || (its != null && its.standsOut());
      return isMore ? Found.by(Verdict.WATCH, Reason.REJECTS, null) : null;
    }

    private @Nullable Found near() {
      for (Standing one : its) {
        boolean bad = !one.characteristic().equals(Quantity.WEDGE) || one.offset() > 0;
        if (bad && matters(one) && isShort(one, false)) {
          return isCavity(one)
              ? orSetting(Found.by(Verdict.WATCH, Reason.NEAR, one.characteristic()))
              : Found.by(Verdict.WATCH, Reason.POUR, one.characteristic());
        }
      }
      return null;
    }

    private Found rest() {
      Standing tightest = null;
      for (Standing one : its) {
        AuditReport.Estimate room = one.room();
        AuditReport.Estimate least = tightest == null ? null : tightest.room();
        // mass is the pour's, and the mold is asked first for what is its own
        if (room != null && isCavity(one) && (least == null || room.value() < least.value())) {
          tightest = one;
        }
      }
      if (tightest == null) {
        tightest = its.stream().filter(one -> one.room() != null).findFirst().orElse(null);
      }
      if (tightest == null) {
        return new Found(null, Reason.NO_TOLERANCE, null, null, null);
      }
      Reason reason = isCavity(tightest) ? Reason.SOUND : Reason.MASS_ALONE;
      return Found.by(Verdict.KEEP, reason, tightest.characteristic());
    }

    private @Nullable Standing named(String name) {
      return its.stream().filter(one -> one.characteristic().equals(name)).findFirst().orElse(null);
    }

    /** Beyond the decision limits, and large against the tolerance. */
    private boolean matters(Standing one) {
      return one.standsOut() && isLarge(one, one.offset());
    }

    private boolean isLarge(Standing one, double offset) {
      Specification spec = specification(one);
      Double limit = offset > 0 ? spec.upper() : spec.lower();
      // The room as the wheel's center leaves it: the mold's own offset is what is measured.
      double center = one.level() - one.offset();
      return limit != null && Math.abs(offset) >= SHARE_OF_ROOM * Math.abs(limit - center);
    }

    /** Whether the mold's own Ppk is below 1: beyond doubt, or as it looks. */
    private boolean isShort(Standing one, boolean beyondDoubt) {
      AuditReport.Estimate room = one.room();
      if (room == null) {
        return false;
      }
      Double high = room.high();
      return beyondDoubt && high != null
          ? high < (isLong[number] ? 1 : SHORT_PPK)
          : room.value() < 1;
    }

    private Specification specification(Standing one) {
      return specifications.getOrDefault(one.characteristic(), Specification.NONE);
    }
  }
}
