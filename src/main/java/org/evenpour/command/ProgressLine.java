package org.evenpour.command;

import java.io.PrintWriter;
import org.evenpour.intake.Progress;

/**
 * How far reading has come, on one line of a terminal; nothing elsewhere. Owned by the thread that
 * reads.
 */
final class ProgressLine implements Progress, AutoCloseable {
  private final PrintWriter terminal;
  private final boolean shown;
  private int percent = -1;

  private ProgressLine(PrintWriter terminal, boolean shown) {
    this.terminal = terminal;
    this.shown = shown;
  }

  /** Shows progress where people watch. */
  @SuppressWarnings("SystemConsoleNull") // on newer Java a line too many, never one too few
  static ProgressLine onTerminal(PrintWriter err) {
    return new ProgressLine(err, System.console() != null);
  }

  @Override
  public void at(long bytesDone, long bytesTotal) {
    int now = bytesTotal <= 0 ? 100 : (int) (100 * bytesDone / bytesTotal);
    // Small logs are read before anyone could look.
    if (shown && now != percent && bytesTotal > 20_000_000) {
      percent = now;
      terminal.print("\rreading " + now + " % ");
      terminal.flush();
    }
  }

  /** So many logs are scored. */
  void scored(int logs, int of) {
    if (shown) {
      percent = 100 * logs / of;
      terminal.print("\rscored " + logs + " of " + of + " ");
      terminal.flush();
    }
  }

  @Override
  public void close() {
    if (percent >= 0) {
      terminal.print("\r                          \r");
      terminal.flush();
    }
  }
}
