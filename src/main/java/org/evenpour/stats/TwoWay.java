package org.evenpour.stats;

public final class TwoWay {
  private TwoWay() {}

  public record Fit(
      double componentRow,
      double componentColumn,
      double componentResidual,
      long residualDf,
      double[] columns) {
    public double columnEffect(int m) {
      return columns[m];
    }
  }

  public static Fit fit(int[] row, int[] col, double[] x, int n) {
    int T = 0, M = 0;
    for (int i = 0; i < n; i++) {
      T = Math.max(T, row[i] + 1);
      M = Math.max(M, col[i] + 1);
    }
    double[] a = new double[T], b = new double[M];
    int[] na = new int[T], nb = new int[M];
    long N = 0;
    double g = 0;
    for (int i = 0; i < n; i++)
      if (!Double.isNaN(x[i])) {
        na[row[i]]++;
        nb[col[i]]++;
        N++;
        g += x[i];
      }
    g /= N;
    int t = 0, m = 0;
    for (int c : na) if (c > 0) t++;
    for (int c : nb) if (c > 0) m++;
    long df = N - t - m + 1;
    if (df < 1 || t < 2 || m < 2) return new Fit(Double.NaN, Double.NaN, Double.NaN, df, b);
    for (int it = 0; it < 30; it++) {
      double[] s = new double[T];
      for (int i = 0; i < n; i++) if (!Double.isNaN(x[i])) s[row[i]] += x[i] - g - b[col[i]];
      for (int k = 0; k < T; k++) a[k] = na[k] == 0 ? 0 : s[k] / na[k];
      double[] u = new double[M];
      for (int i = 0; i < n; i++) if (!Double.isNaN(x[i])) u[col[i]] += x[i] - g - a[row[i]];
      double ch = 0;
      for (int k = 0; k < M; k++) {
        double v = nb[k] == 0 ? 0 : u[k] / nb[k];
        ch = Math.max(ch, Math.abs(v - b[k]));
        b[k] = v;
      }
      if (ch < 1e-12) break;
    }
    double rss = 0;
    double[] sm = new double[M], st = new double[T];
    for (int i = 0; i < n; i++)
      if (!Double.isNaN(x[i])) {
        double r = x[i] - g - a[row[i]] - b[col[i]];
        rss += r * r;
        sm[col[i]] += x[i] - g;
        st[row[i]] += x[i] - g;
      }
    double rm = 0, rt = 0;
    for (int i = 0; i < n; i++)
      if (!Double.isNaN(x[i])) {
        double d = x[i] - g - sm[col[i]] / nb[col[i]];
        rm += d * d;
        d = x[i] - g - st[row[i]] / na[row[i]];
        rt += d * d;
      }
    double e = rss / df;
    return new Fit(
        (rm - rss - (t - 1) * e) / (N - m), (rt - rss - (m - 1) * e) / (N - t), e, df, b);
  }
}
