package org.evenpour.view.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.atomic.AtomicInteger;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport.Signal;
import org.junit.jupiter.api.Test;

class SelectionTest {
  private static Signal moldSignal() {
    return Sample.opened().report().signals().stream()
        .filter(signal -> signal.scope() == Scope.MOLD)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aSignalBringsItsCharacteristicAndItsMold() {
    Selection selection = new Selection();
    Signal signal = moldSignal();
    selection.chooseSignal(signal);
    assertThat(selection.signal()).isEqualTo(signal.id());
    assertThat(selection.mold()).isEqualTo(signal.mold());
    assertThat(selection.characteristic()).isEqualTo(signal.characteristic());
    assertThat(selection.wheel()).isEqualTo(signal.wheel());
  }

  @Test
  void anotherMoldLetsTheSignalGo() {
    Selection selection = new Selection();
    selection.chooseSignal(moldSignal());
    selection.chooseMold("2");
    assertThat(selection.signal()).isNull();
    assertThat(selection.mold()).isEqualTo("2");
  }

  @Test
  void watchersAreToldOncePerChangeAndNotWithoutOne() {
    Selection selection = new Selection();
    AtomicInteger told = new AtomicInteger();
    selection.watch(told::incrementAndGet);
    selection.chooseMold("3");
    selection.chooseMold("3");
    selection.chooseStretch(new Stretch(1, 5));
    selection.chooseStretch(new Stretch(1, 5));
    assertThat(told).hasValue(2);
  }

  @Test
  void whoUnwatchesIsToldNoMore() {
    Selection selection = new Selection();
    AtomicInteger told = new AtomicInteger();
    Runnable watcher = told::incrementAndGet;
    selection.watch(watcher);
    selection.unwatch(watcher);
    selection.chooseMold("3");
    assertThat(told).hasValue(0);
  }

  @Test
  void anotherLogKeepsOnlyWhatItHasToo() {
    Selection selection = new Selection();
    selection.chooseMold("no such mold");
    selection.chooseCharacteristic("no such characteristic");
    selection.chooseStretch(new Stretch(100_000, 100_010));
    Sample.opened().fit(selection);
    assertThat(selection.mold()).isNull();
    assertThat(selection.characteristic()).isEqualTo("mass");
    assertThat(selection.stretch()).isNull();
    assertThat(selection.wheel()).isEqualTo("T1");
  }
}
