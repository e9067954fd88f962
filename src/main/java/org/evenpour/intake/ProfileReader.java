package org.evenpour.intake;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import org.evenpour.casting.CharacteristicProfile;
import org.evenpour.casting.PouringPlace;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.SettingProfile;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelProfile;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/** Reads wheel profiles. */
public final class ProfileReader {
  private static final Remark ITSELF = Remark.of("profile.itself");
  private static final int MOLDS_LIMIT = 1000;

  /** Documents in a file; a plant has far fewer wheels. */
  private static final int DOCUMENTS_LIMIT = 1000;

  private static final int LAG_LIMIT = 1000;

  private static final List<String> KEYS =
      List.of(
          "wheel",
          "molds",
          "zone",
          "characteristics",
          "settings",
          "headings",
          "backwards_seconds",
          "stop_minutes",
          "false_alarms_per_shift",
          "shift_hours",
          "pouring_place",
          "turns",
          "set_point_move_costs",
          "settings_alarm_share");
  private static final List<String> CHARACTERISTIC_KEYS =
      List.of("unit", "lower", "target", "upper", "plausible");
  private static final List<String> SETTING_KEYS = List.of("group", "lag_turns", "wets_mold");

  private static final SortedMap<String, PouringPlace> PLACES =
      new TreeMap<>(
          Map.of(
              "right", PouringPlace.RIGHT,
              "top", PouringPlace.TOP,
              "left", PouringPlace.LEFT,
              "bottom", PouringPlace.BOTTOM));

  private static final SortedMap<String, Boolean> TURNS =
      new TreeMap<>(Map.of("clockwise", true, "counterclockwise", false));

  private ProfileReader() {}

  /**
   * Reads the profiles of a file, one for each of its documents.
   *
   * @throws IntakeException with the line and what mends it
   */
  public static Profiles read(Path file) throws IntakeException {
    return read(file.toString(), YamlFile.text(file, ITSELF));
  }

  static Profiles read(String file, String text) throws IntakeException {
    List<WheelProfile> profiles = new ArrayList<>();
    Map<String, String> headings = new LinkedHashMap<>();
    List<YamlPart> documents = YamlFile.documents(file, text, ITSELF);
    if (documents.size() > DOCUMENTS_LIMIT) {
      throw documents.get(DOCUMENTS_LIMIT).error("profile.many", DOCUMENTS_LIMIT);
    }
    for (YamlPart part : documents) {
      if (part.isEmpty()) {
        continue;
      }
      WheelProfile profile = profile(part, headings);
      for (WheelProfile other : profiles) {
        if (Objects.equals(other.wheel(), profile.wheel())) {
          throw profile.wheel() == null
              ? part.error("profile.two")
              : part.error("profile.two.of", CellText.shown(profile.wheel()));
        }
      }
      profiles.add(profile);
    }
    return new Profiles(profiles);
  }

  private static WheelProfile profile(YamlPart part, Map<String, String> headings)
      throws IntakeException {
    Map<String, YamlPart> keys = part.map(KEYS);
    WheelProfile usual = WheelProfile.DEFAULT;
    YamlPart wheel = keys.get("wheel");
    YamlPart molds = keys.get("molds");
    YamlPart zone = keys.get("zone");
    return new WheelProfile(
        wheel == null ? null : wheel.text(),
        molds == null ? null : molds.wholeNumber(1, MOLDS_LIMIT),
        zone == null ? usual.zone() : zone(zone),
        characteristics(keys.get("characteristics")),
        settings(keys.get("settings")),
        headings(keys.get("headings"), headings),
        positive(keys.get("backwards_seconds"), usual.backwardsSeconds(), true),
        positive(keys.get("stop_minutes"), usual.stopMinutes(), false),
        positive(keys.get("false_alarms_per_shift"), usual.falseAlarmsPerShift(), false),
        positive(keys.get("shift_hours"), usual.shiftHours(), false),
        PLACES.getOrDefault(word(keys.get("pouring_place"), PLACES.keySet()), usual.pouringPlace()),
        TURNS.getOrDefault(word(keys.get("turns"), TURNS.keySet()), usual.clockwise()),
        positive(keys.get("set_point_move_costs"), usual.setPointMoveCosts(), true),
        share(keys.get("settings_alarm_share"), usual.settingsAlarmShare()));
  }

  /** One of the known words; empty where the key is not there. */
  private static String word(@Nullable YamlPart part, Collection<String> known)
      throws IntakeException {
    if (part == null) {
      return "";
    }
    String text = part.text().toLowerCase(Locale.ROOT);
    if (!known.contains(text)) {
      throw part.error("profile.word", part.name(), part.shown(), String.join(", ", known));
    }
    return text;
  }

  private static ZoneId zone(YamlPart part) throws IntakeException {
    String name = part.text();
    try {
      return ZoneId.of(name);
    } catch (DateTimeException e) {
      List<String> known = ZoneId.getAvailableZoneIds().stream().sorted().toList();
      Remark mend =
          known.stream()
              .filter(one -> one.equalsIgnoreCase(name))
              .findFirst()
              .or(() -> CellText.nearest(name, known))
              .map(one -> Remark.of("profile.meant", one))
              .orElse(Remark.of("profile.zone.form"));
      throw part.error("profile.zone", CellText.shown(name), mend);
    }
  }

  private static double positive(@Nullable YamlPart part, double usual, boolean orZero)
      throws IntakeException {
    if (part == null) {
      return usual;
    }
    double value = part.number();
    if (value < 0 || (value == 0 && !orZero)) {
      throw part.error(orZero ? "profile.zero" : "profile.positive", part.name(), part.shown());
    }
    return value;
  }

  /** A part of something that leaves some of it. */
  private static double share(@Nullable YamlPart part, double usual) throws IntakeException {
    double value = positive(part, usual, true);
    if (part != null && value >= 1) {
      throw part.error("profile.share", part.name(), part.shown());
    }
    return value;
  }

  private static Map<String, CharacteristicProfile> characteristics(@Nullable YamlPart part)
      throws IntakeException {
    Map<String, CharacteristicProfile> all = new LinkedHashMap<>();
    if (part != null) {
      for (Map.Entry<String, YamlPart> one : part.map(Quantity.ALL).entrySet()) {
        all.put(one.getKey(), characteristic(one.getKey(), one.getValue()));
      }
    }
    return all;
  }

  private static CharacteristicProfile characteristic(String name, YamlPart part)
      throws IntakeException {
    Map<String, YamlPart> keys = part.map(CHARACTERISTIC_KEYS);
    Unit usual = name.startsWith(Quantity.MASS) ? Unit.KG : Unit.MM;
    YamlPart unitPart = keys.get("unit");
    Unit unit = unitPart == null ? usual : unit(unitPart, usual);
    Double lower = canonical(keys.get("lower"), unit);
    Double target = canonical(keys.get("target"), unit);
    Double upper = canonical(keys.get("upper"), unit);
    checkOrder(keys, "lower", lower, "target", target);
    checkOrder(keys, "target", target, "upper", upper);
    checkOrder(keys, "lower", lower, "upper", upper);
    YamlPart upperPart = keys.get("upper");
    if (upperPart != null && lower != null && lower.equals(upper)) {
      throw upperPart.error("profile.equal", "lower", "upper", upperPart.shown());
    }
    Double plausibleLow = null;
    Double plausibleHigh = null;
    YamlPart plausible = keys.get("plausible");
    if (plausible != null) {
      List<YamlPart> bounds = plausible.list();
      if (bounds.size() != 2) {
        throw plausible.error("profile.plausible", bounds.size());
      }
      plausibleLow = unit.toCanonical(bounds.get(0).number());
      plausibleHigh = unit.toCanonical(bounds.get(1).number());
      if (plausibleLow >= plausibleHigh) {
        throw plausible.error("profile.plausible.order");
      }
    }
    return new CharacteristicProfile(
        unit, new Specification(lower, target, upper), plausibleLow, plausibleHigh);
  }

  private static void checkOrder(
      Map<String, YamlPart> keys,
      String smaller,
      @Nullable Double smallerValue,
      String larger,
      @Nullable Double largerValue)
      throws IntakeException {
    YamlPart part = keys.get(larger);
    if (part != null && smallerValue != null && largerValue != null && smallerValue > largerValue) {
      throw part.error("profile.order", smaller, larger);
    }
  }

  private static @Nullable Double canonical(@Nullable YamlPart part, Unit unit)
      throws IntakeException {
    return part == null ? null : Double.valueOf(unit.toCanonical(part.number()));
  }

  private static Unit unit(YamlPart part, Unit usual) throws IntakeException {
    String suffix = part.text();
    String units = usual.equals(Unit.KG) ? "kg, lb, g, t" : "mm, cm, in";
    try {
      Unit unit = Unit.of(suffix);
      if (unit.canonical().equals(usual.canonical())) {
        return unit;
      }
    } catch (IllegalArgumentException e) {
      // said below, together with a unit of something else
    }
    throw part.error("profile.unit", CellText.shown(suffix), units);
  }

  private static Map<String, SettingProfile> settings(@Nullable YamlPart part)
      throws IntakeException {
    Map<String, SettingProfile> all = new LinkedHashMap<>();
    if (part != null) {
      for (Map.Entry<String, YamlPart> one : part.map(null).entrySet()) {
        Map<String, YamlPart> keys = one.getValue().map(SETTING_KEYS);
        YamlPart group = keys.get("group");
        YamlPart lag = keys.get("lag_turns");
        YamlPart wets = keys.get("wets_mold");
        all.put(
            one.getKey(),
            new SettingProfile(
                group == null ? "" : group.text(),
                lag == null ? 0 : lag.wholeNumber(0, LAG_LIMIT),
                wets == null ? null : wets.yesOrNo()));
      }
    }
    return all;
  }

  /** Headings count in all logs, so that no two documents may say different things of one. */
  private static Map<String, String> headings(@Nullable YamlPart part, Map<String, String> before)
      throws IntakeException {
    Map<String, String> all = new LinkedHashMap<>();
    if (part != null) {
      for (Map.Entry<String, YamlPart> one : part.map(null).entrySet()) {
        String name = one.getValue().text();
        String other = before.put(one.getKey().toLowerCase(Locale.ROOT), name);
        if (other != null && !other.equals(name)) {
          throw one.getValue().error("profile.heading", CellText.shown(one.getKey()), other, name);
        }
        all.put(one.getKey(), name);
      }
    }
    return all;
  }
}
