package org.evenpour.view.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Objects;
import org.assertj.core.data.Offset;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.picture.ScatterPicture;
import org.junit.jupiter.api.Test;

/** The scatter of the Settings page shows the audit's own effect, and the anodes of the choice. */
class ScatterViewTest {

  private static ScatterPicture scatter(Desk desk, String setting) {
    var report = Objects.requireNonNull(desk.characteristic());
    SettingRows.Row row =
        SettingRows.of(desk, report).stream()
            .filter(one -> one.report().name().equals(setting))
            .findFirst()
            .orElseThrow();
    return Objects.requireNonNull(ScatterView.of(desk, row, report));
  }

  private static Effect effect(Desk desk, String setting) {
    return desk.report().settings().stream()
        .filter(one -> one.name().equals(setting))
        .flatMap(one -> one.effects().stream())
        .filter(one -> one.characteristic().equals(desk.selection().characteristic()))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void drawsTheEffectOfTheReportWithItsInterval() {
    Desk desk = Sample.desk();
    ScatterPicture scatter = scatter(desk, "pour_rate_kg_s");
    Effect effect = effect(desk, "pour_rate_kg_s");
    ScatterPicture.Slope slope = Objects.requireNonNull(scatter.slope());
    assertThat(Double.valueOf(slope.middle())).isEqualTo(effect.perUnit());
    assertThat(Double.valueOf(slope.low())).isEqualTo(effect.low());
    assertThat(Double.valueOf(slope.high())).isEqualTo(effect.high());
    // 6,107 anodes, of which 131 were not measured at every point (the sample's README).
    assertThat(scatter.dots().x()).hasSizeGreaterThan(5900);
  }

  @Test
  void followsTheChosenMoldAndTurns() {
    Desk desk = Sample.desk();
    desk.selection().chooseMold("17");
    desk.selection().chooseStretch(new Stretch(100, 120));
    ScatterPicture scatter = scatter(desk, "pour_rate_kg_s");
    // A mold is poured once in a turn.
    assertThat(scatter.dots().x()).hasSizeBetween(15, 20);
  }

  /** Spray flow acts one turn later: each dot has the flow of the mold's pour before. */
  @Test
  void pairsASettingThatActsLaterWithTheAnodeThatItActsOn() {
    Desk desk = Sample.desk();
    desk.selection().chooseMold("17");
    ScatterPicture scatter = scatter(desk, "spray_flow_l_min");
    WheelRows wheel = desk.wheel();
    var flow =
        Objects.requireNonNull(
            wheel.record().settings().stream()
                .filter(one -> one.name().equals("spray_flow_l_min"))
                .findFirst()
                .orElseThrow()
                .numbers());
    int[] rows = wheel.rows("17");
    assertThat(scatter.dots().x()[0]).isCloseTo(flow.get(rows[0]), Offset.offset(0.0));
    assertThat(scatter.dots().says().apply(0)).contains(", turn 2, mold 17: ").contains(" L/min, ");
  }
}
