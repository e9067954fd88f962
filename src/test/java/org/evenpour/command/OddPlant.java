package org.evenpour.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Profiles that can be read but that no plant has, events that nobody would write, and gauge
 * studies that are too good.
 *
 * <p>Owned by one thread.
 */
final class OddPlant {
  private static final String[] NUMBERS = {
    "0", "1e-300", "1e-9", "0.001", "0.5", "1", "2", "10", "26", "60", "388", "390", "1e3", "1e6",
    "1e9", "1e15"
  };

  /** What is refused; seldom, or nothing else would be tried. */
  private static final String[] ABSURD = {"1e16", "1e160", "1.7e308", "-1", "abc"};

  private final Random random;

  OddPlant(Random random) {
    this.random = random;
  }

  private String number() {
    return random.nextInt(40) == 0
        ? ABSURD[random.nextInt(ABSURD.length)]
        : NUMBERS[random.nextInt(NUMBERS.length)];
  }

  private <T> T one(List<T> of) {
    return of.get(random.nextInt(of.size()));
  }

  /** A profile; some are refused, as they should be. */
  String profile() {
    StringBuilder text = new StringBuilder();
    maybe(text, 6, "wheel: " + one(List.of("T1", "N2", "\"\"")));
    maybe(text, 3, "molds: " + one(List.of("1", "2", "26", "36", "1000")));
    maybe(
        text,
        3,
        "zone: " + one(List.of("UTC", "America/Santiago", "\"-03:00\"", "Asia/Kathmandu")));
    maybe(text, 4, "backwards_seconds: " + number());
    maybe(text, 4, "stop_minutes: " + number());
    maybe(text, 4, "false_alarms_per_shift: " + number());
    maybe(text, 4, "shift_hours: " + number());
    maybe(text, 4, "set_point_move_costs: " + number());
    maybe(
        text, 4, "settings_alarm_share: " + one(List.of("0", "0.1", "0.5", "0.999999", "1e-300")));
    text.append("characteristics:\n");
    for (String name : List.of("mass", "thickness", "wedge", "mass_deviation")) {
      if (random.nextInt(3) > 0) {
        text.append("  ").append(name).append(": ").append(characteristic(name)).append('\n');
      }
    }
    text.append("settings:\n");
    for (String name :
        List.of("spray_flow_l_min", "wash_volume_ml", "mold_temp_c", "crew", "none")) {
      if (random.nextInt(3) == 0) {
        text.append("  ").append(name);
        text.append(": {group: ").append(one(List.of("wash", "cooling", "pour", "x")));
        text.append(", lag_turns: ")
            .append(one(List.of("0", "1", "2", "30", "1000")))
            .append("}\n");
      }
    }
    return text.toString()
        .replaceFirst("settings:\n$", "")
        .replaceFirst("characteristics:\n(?! )", "");
  }

  private void maybe(StringBuilder text, int outOf, String line) {
    if (random.nextInt(outOf) == 0) {
      text.append(line).append('\n');
    }
  }

  private String characteristic(String name) {
    double center = name.startsWith("mass") ? 388 : name.equals("wedge") ? 1 : 43;
    double half = one(List.of(1e-12, 0.1, 0.1, 3.0, 3.0, 3.0, 50.0, 1e10));
    half = random.nextInt(60) == 0 ? one(List.of(0.0, 1e-300, 1e150, 1e308)) : half;
    List<String> keys = new ArrayList<>();
    maybe(
        keys, "unit: " + (name.startsWith("mass") ? one(List.of("kg", "lb", "g", "t")) : "in"), 5);
    maybe(keys, "lower: " + (center - half), 2);
    maybe(keys, "target: " + (random.nextInt(8) == 0 ? number() : Double.toString(center)), 2);
    maybe(keys, "upper: " + (center + half), 2);
    maybe(keys, "plausible: [" + (center - 10 * half) + ", " + (center + 10 * half) + "]", 4);
    return "{" + String.join(", ", keys) + "}";
  }

  private void maybe(List<String> keys, String key, int outOf) {
    if (random.nextInt(outOf) == 0) {
      keys.add(key);
    }
  }

  /** An events file. */
  String events() {
    StringBuilder text = new StringBuilder("at,wheel,mold,event,note\n");
    int count = random.nextInt(40);
    for (int i = 0; i < count; i++) {
      text.append(
          "2026-03-%02dT%02d:%02d:00-03:00,%s,%s,%s,%s\n"
              .formatted(
                  1 + random.nextInt(9),
                  random.nextInt(24),
                  random.nextInt(60),
                  random.nextInt(10) == 0 ? "Z9" : "",
                  random.nextBoolean() ? "" : Integer.toString(1 + random.nextInt(30)),
                  one(
                      List.of(
                          "mold_changed",
                          "mold_dressed",
                          "wash_batch",
                          "nozzle_cleaned",
                          "wheel_stopped",
                          "scale_checked",
                          "x".repeat(200))),
                  one(List.of("", "old", "<html>", "=1+1"))));
    }
    return text.toString();
  }

  /** A gauge study or check weighings. */
  String gauge() {
    if (random.nextBoolean()) {
      StringBuilder text = new StringBuilder("at,reference_kg,mass_kg\n");
      int count = 2 + random.nextInt(20);
      String off = one(List.of("0", "0.1", "1e9", "1e150"));
      for (int i = 0; i < count; i++) {
        double mass = 400 + Double.parseDouble(off) * random.nextInt(3);
        text.append("2026-03-%02dT06:00:00Z,400,%s%n".formatted(1 + i, mass));
      }
      return text.toString();
    }
    StringBuilder text = new StringBuilder("part,operator,mass_kg\n");
    int parts = 2 + random.nextInt(8);
    int operators = 2 + random.nextInt(2);
    double scale = one(List.of(0.0, 0.1, 1.0, 1e9, 1e150));
    for (int part = 0; part < parts; part++) {
      for (int i = 0; i < 2 * operators; i++) {
        double mass = 388 + scale * random.nextGaussian();
        text.append("p%d,o%d,%s%n".formatted(part, i % operators, mass));
      }
    }
    return text.toString();
  }
}
