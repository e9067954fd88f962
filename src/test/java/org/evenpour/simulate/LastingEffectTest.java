package org.evenpour.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/**
 * The definition, carried out: the same wheel with the same luck, with and without a setting that
 * stands elsewhere for long.
 */
class LastingEffectTest {

  @Test
  void pourRateActsOnMassAndThroughItOnThickness() {
    Pair pair = lastPours(Fault.POUR_RATE_DRIFT);
    assertThat(pair.change(pour -> pour.settings().pourRateKgS())).isNotZero();
    assertThat(pair.slope(pour -> pour.settings().pourRateKgS(), Pour::massKg))
        .isCloseTo(size("pour_rate_kg_s", "mass"), within(1e-9));
    assertThat(pair.slope(pour -> pour.settings().pourRateKgS(), p -> p.thickness().meanMm()))
        .isCloseTo(size("pour_rate_kg_s", "thickness"), within(1e-9));
  }

  @Test
  void meltActsOnMassAndThroughItOnThickness() {
    Pair pair = lastPours(Fault.MELT_TEMPERATURE);
    assertThat(pair.slope(pour -> pour.settings().meltTemperatureC(), Pour::massKg))
        .isCloseTo(size("melt_temp_c", "mass"), within(1e-9));
    assertThat(pair.slope(pour -> pour.settings().meltTemperatureC(), p -> p.thickness().meanMm()))
        .isCloseTo(size("melt_temp_c", "thickness"), within(1e-9));
  }

  /** After 25 turns and more, 0.7²⁵ of the coat's share is still to come: one part in 10,000. */
  @Test
  void washActsAtOnceAndThroughAllOfItsCoat() {
    Pair pair = lastPours(Fault.THIN_WASH);
    double slope = pair.slope(pour -> pour.settings().washVolumeMl(), p -> p.thickness().meanMm());
    assertThat(slope).isCloseTo(size("wash_volume_ml", "thickness"), within(1e-7));
    assertThat(size("wash_volume_ml", "thickness")).isCloseTo(0.00023, within(1e-12));
    assertThat(size("wash_volume_ml", "mass")).isZero();
  }

  @Test
  void oxygenActsOnThickness() {
    Pair pair = lastPours(Fault.OVER_REDUCED_MELT);
    assertThat(pair.slope(pour -> pour.settings().oxygenPpm(), p -> p.thickness().meanMm()))
        .isCloseTo(size("oxygen_ppm", "thickness"), within(1e-9));
  }

  /**
   * By a little too much of it: much more makes the points scatter besides, and too little makes
   * the mold warp, which no lasting effect tells.
   */
  @Test
  void sprayActsThroughTheMoldsTemperature() {
    Pair pair = lastPours(Scenario.week(11).withFault(Fault.WET_WASH).withSizeSigmas(0.5));
    assertThat(pair.slope(pour -> pour.settings().sprayFlowLMin(), p -> p.thickness().meanMm()))
        .isCloseTo(size("spray_flow_l_min", "thickness"), within(1e-9));
    assertThat(pair.slope(p -> p.settings().moldTemperatureC(), p -> p.thickness().meanMm()))
        .isCloseTo(size("mold_temp_c", "thickness"), within(1e-9));
  }

  @Test
  void theLaunderActsOnNothing() {
    Pair pair = lastPours(Fault.IDLE_SETTING_STEP);
    assertThat(pair.slope(pour -> pour.settings().launderLevelMm(), Pour::massKg)).isZero();
    assertThat(size("launder_level_mm", "mass")).isZero();
    assertThat(size("launder_level_mm", "thickness")).isZero();
  }

  /** 0.8 °C of mold a degree of water, −0.0135 mm a degree of mold: the list in {@link Effect}. */
  @Test
  void writesSixDigitsAndTheUnits() {
    assertThat(LastingEffect.ofTordilla().stream().map(LastingEffect::cells))
        .hasSize(20)
        .contains(List.of("T1", "cooling_water_c", "thickness", "-0.0108", "mm per °C"))
        .contains(List.of("T1", "pour_rate_kg_s", "thickness", "0.687916", "mm per kg/s"))
        .contains(List.of("T1", "ambient_c", "mass", "0", "kg per °C"));
  }

  private record Pair(Pour with, Pour without) {
    double change(ToDoubleFunction<Pour> value) {
      return value.applyAsDouble(with) - value.applyAsDouble(without);
    }

    double slope(ToDoubleFunction<Pour> setting, ToDoubleFunction<Pour> characteristic) {
      return change(characteristic) / change(setting);
    }
  }

  /** The last pour of the first mold concerned, with the fault and without. */
  private static Pair lastPours(Fault fault) {
    return lastPours(Scenario.week(11).withFault(fault));
  }

  private static Pair lastPours(Scenario scenario) {
    Wheel wheel = Wheel.of(scenario);
    PlantedFault planted = wheel.faults().get(0);
    Wheel without = wheel.fresh(List.of());
    List<Pair> pairs = new ArrayList<>();
    while (wheel.hasNext()) {
      Pour pour = wheel.next().pour();
      Pour sound = without.next().pour();
      if (planted.acts(pour.turn(), pour.mold() - 1, 0)
          && pour.mold() - 1 == Math.max(0, planted.firstMold())) {
        pairs.add(new Pair(pour, sound));
      }
    }
    return pairs.get(pairs.size() - 1);
  }

  private static double size(String setting, String characteristic) {
    return LastingEffect.ofTordilla().stream()
        .filter(e -> e.setting().equals(setting) && e.characteristic().equals(characteristic))
        .findFirst()
        .orElseThrow()
        .size();
  }
}
