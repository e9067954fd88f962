package org.evenpour.view.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Objects;
import org.evenpour.findings.EffectInFull.Level;
import org.evenpour.findings.EffectInFull.Levels;
import org.evenpour.table.Column;
import org.junit.jupiter.api.Test;

/** The words below the table of settings when a category is chosen. */
class SettingRowsTest {
  @Test
  void sayWhatEachCrewGoesWith() {
    Desk desk = Sample.desk();
    desk.selection().chooseCharacteristic("mass");
    var report = Objects.requireNonNull(desk.characteristic());
    SettingRows.Row crew = row(desk, "crew");
    Levels levels = Objects.requireNonNull(Objects.requireNonNull(crew.effect()).inFull().levels());
    List<String> compared =
        levels.each().stream().filter(Level::compared).map(Level::name).toList();
    assertThat(compared).hasSizeGreaterThan(1);
    assertThat(SettingRows.said(desk, crew)).contains(compared).contains("visits");
    assertThat(SettingRows.said(desk, row(desk, "charge"))).contains("too few came back");
    // No unit, hence no effect of one.
    var columns = SettingRows.columns(desk, report);
    int effect = columns.stream().map(Column::key).toList().indexOf("effect");
    assertThat(columns.get(effect).cell().apply(crew).text()).isEqualTo("—");
  }

  private static SettingRows.Row row(Desk desk, String name) {
    return SettingRows.of(desk, Objects.requireNonNull(desk.characteristic())).stream()
        .filter(one -> one.report().name().equals(name))
        .findFirst()
        .orElseThrow();
  }
}
