package org.evenpour.report.workbook;

/**
 * An axis from one round number to another.
 *
 * @param from its lower end
 * @param to its upper end
 * @param step between two ticks
 */
record Scale(double from, double to, double step) {

  /** The smallest axis with about five steps of 1, 2 or 5 times a power of ten that holds both. */
  static Scale over(double low, double high) {
    double room = high > low ? high - low : Math.max(1, Math.abs(high) * 0.01);
    double rough = room / 5;
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    double times = rough / power;
    double step = (times <= 1 ? 1 : times <= 2 ? 2 : times <= 5 ? 5 : 10) * power;
    double from = Math.floor(low / step - 1e-9) * step;
    double to = Math.ceil(high / step + 1e-9) * step;
    return new Scale(from, to > from ? to : from + step, step);
  }

  /** A number format with the decimals that the steps need. */
  String format() {
    int decimals = (int) Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
    return decimals == 0 ? "0" : "0." + "0".repeat(decimals);
  }
}
