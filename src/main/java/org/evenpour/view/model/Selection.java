package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.evenpour.casting.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * What is chosen, everywhere at once: a wheel, a characteristic, a mold, a signal, a setting and a
 * stretch of turns. Owned by the event thread.
 */
public final class Selection {
  private final List<Runnable> watchers = new ArrayList<>();
  private String wheel = "";
  private String characteristic = Quantity.MASS;
  private @Nullable String mold;
  private @Nullable String signal;
  private @Nullable String setting;
  private @Nullable Stretch stretch;

  /** The same choices, which nobody watches and nobody changes. */
  Selection copy() {
    Selection copy = new Selection();
    copy.wheel = wheel;
    copy.characteristic = characteristic;
    copy.mold = mold;
    copy.signal = signal;
    copy.setting = setting;
    copy.stretch = stretch;
    return copy;
  }

  /** Is told after every change. */
  public void watch(Runnable watcher) {
    watchers.add(watcher);
  }

  /** Is told no more. */
  public void unwatch(Runnable watcher) {
    watchers.remove(watcher);
  }

  /** How many watch; a screen that is gone must not. */
  public int watchers() {
    return watchers.size();
  }

  /** The chosen wheel. */
  public String wheel() {
    return wheel;
  }

  /** The chosen characteristic. */
  public String characteristic() {
    return characteristic;
  }

  /** The chosen mold; null = none. */
  public @Nullable String mold() {
    return mold;
  }

  /** Id of the chosen signal; null = none. */
  public @Nullable String signal() {
    return signal;
  }

  /** Column of the chosen setting; null = none. */
  public @Nullable String setting() {
    return setting;
  }

  /** The chosen stretch; null = the whole period. */
  public @Nullable Stretch stretch() {
    return stretch;
  }

  /** Another wheel: its molds and signals are others. */
  public void chooseWheel(String newWheel) {
    if (!newWheel.equals(wheel)) {
      wheel = newWheel;
      mold = null;
      signal = null;
      stretch = null;
      tell();
    }
  }

  /** Another characteristic; a signal of another one is let go. */
  public void chooseCharacteristic(String newCharacteristic) {
    if (!newCharacteristic.equals(characteristic)) {
      characteristic = newCharacteristic;
      signal = null;
      tell();
    }
  }

  /** A mold, or none; a signal is let go. */
  public void chooseMold(@Nullable String newMold) {
    if (!Objects.equals(newMold, mold) || signal != null) {
      mold = newMold;
      signal = null;
      tell();
    }
  }

  /** A signal, with its wheel, its characteristic and its mold. */
  public void chooseSignal(org.evenpour.findings.AuditReport.@Nullable Signal newSignal) {
    if (newSignal == null) {
      if (signal != null) {
        signal = null;
        tell();
      }
      return;
    }
    if (!newSignal.id().equals(signal)) {
      wheel = newSignal.wheel();
      characteristic = newSignal.characteristic();
      mold = newSignal.mold();
      signal = newSignal.id();
      tell();
    }
  }

  /** A setting, or none. */
  public void chooseSetting(@Nullable String newSetting) {
    if (!Objects.equals(newSetting, setting)) {
      setting = newSetting;
      tell();
    }
  }

  /** A stretch of turns, or the whole period. */
  public void chooseStretch(@Nullable Stretch newStretch) {
    if (!Objects.equals(newStretch, stretch)) {
      stretch = newStretch;
      tell();
    }
  }

  /** Another log is about to be shown: nothing of the one before is chosen any more. */
  public void forget() {
    mold = null;
    signal = null;
    setting = null;
    stretch = null;
  }

  /** The same log was read again: signals may have other names. */
  public void renew(OpenedLog before, OpenedLog after) {
    org.evenpour.findings.AuditReport.Signal chosen = before.signal(signal);
    if (chosen != null) {
      org.evenpour.findings.AuditReport.Signal again = after.like(chosen);
      signal = again == null ? null : again.id();
    }
    fit(after);
  }

  /** Keeps of the choices what another log has too. */
  void fit(OpenedLog log) {
    WheelRows rows = log.wheel(wheel);
    wheel = rows.record().wheel();
    if (rows.characteristic(characteristic) == null && !rows.record().characteristics().isEmpty()) {
      characteristic = rows.record().characteristics().get(0).name();
    }
    if (mold != null && rows.record().molds().find(mold) < 0) {
      mold = null;
    }
    if (log.signal(signal) == null) {
      signal = null;
    }
    Stretch now = stretch;
    if (now != null && !now.touches(rows.first(), rows.last())) {
      stretch = null;
    }
    tell();
  }

  private void tell() {
    List.copyOf(watchers).forEach(Runnable::run);
  }
}
