package org.evenpour.view.screen;

import java.awt.Graphics2D;
import java.awt.print.PageFormat;
import java.awt.print.Printable;
import java.awt.print.PrinterException;
import java.awt.print.PrinterJob;
import javax.swing.JComponent;
import javax.swing.JOptionPane;
import org.evenpour.view.model.Look;

/** Prints a screen on one sheet. */
final class Printing {
  private Printing() {}

  static void print(JComponent screen, Look look) {
    PrinterJob job = PrinterJob.getPrinterJob();
    prepare(job, screen, look.say("window.title"), job.defaultPage());
    try {
      if (job.printDialog()) {
        job.print();
      }
    } catch (PrinterException e) {
      JOptionPane.showMessageDialog(
          screen, look.say("export.failed", String.valueOf(e.getMessage())));
    }
  }

  /** One sheet, on its side. */
  static void prepare(PrinterJob job, JComponent screen, String name, PageFormat format) {
    job.setJobName(name);
    format.setOrientation(PageFormat.LANDSCAPE);
    job.setPrintable((g, page, index) -> sheet(screen, (Graphics2D) g, page, index), format);
  }

  /** Draws the screen as large as the sheet allows. */
  static int sheet(JComponent screen, Graphics2D g, PageFormat page, int index) {
    if (index > 0) {
      return Printable.NO_SUCH_PAGE;
    }
    double scale =
        Math.min(
            page.getImageableWidth() / screen.getWidth(),
            page.getImageableHeight() / screen.getHeight());
    g.translate(page.getImageableX(), page.getImageableY());
    g.scale(scale, scale);
    screen.printAll(g);
    return Printable.PAGE_EXISTS;
  }
}
