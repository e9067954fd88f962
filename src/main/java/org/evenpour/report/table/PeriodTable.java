package org.evenpour.report.table;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.IntColumn;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.RejectReport;
import org.evenpour.findings.RejectReport.OfClass;
import org.evenpour.report.RejectText;
import org.evenpour.report.Sentences;
import org.evenpour.table.Cell;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * What was cast and what of it was rejected, by defect: in the whole record, and in its second half
 * against its first. No other period is at hand, so that these two are compared; they part at the
 * middle of the time.
 */
public final class PeriodTable {
  private static final Digits SHARE = Digits.share(1);

  /** So many defects of a wheel are told; the sheet of rejects has all. A choice. */
  static final int MOST_CLASSES = 5;

  private PeriodTable() {}

  /**
   * Some anodes of a period.
   *
   * @param count how many
   * @param of how many of that period have a disposition; 0 where they are not rejects
   * @param tonnes null where no mass is known
   */
  public record Part(long count, long of, @Nullable Double tonnes) {
    private @Nullable Double share() {
      return of == 0 ? null : (Double) ((double) count / of);
    }
  }

  /**
   * What was cast, or rejected, of a wheel.
   *
   * @param first null where the record is not at hand, or is too short to be parted
   */
  public record Row(String name, Part all, @Nullable Part first, @Nullable Part second) {}

  /** The middle of a record, which parts it; null where one half would be empty. */
  public static @Nullable Instant middle(AuditReport report, @Nullable CastingRecord record) {
    if (record == null) {
      return null;
    }
    long from = report.log().firstCastAt().toEpochMilli();
    long to = report.log().lastCastAt().toEpochMilli();
    return to <= from ? null : Instant.ofEpochMilli(from + (to - from) / 2 + 1);
  }

  /** The table of a report. */
  public static Table<Row> of(
      AuditReport report, @Nullable CastingRecord record, Sentences sentences) {
    Words words = sentences.words();
    Instant middle = middle(report, record);
    Columns<Row> columns = Columns.<Row>of(sentences).text("period", Row::name);
    part(columns, "all", words.say("paper.all"), Row::all);
    if (middle != null) {
      part(columns, "first_half", words.say("paper.first"), Row::first);
      part(columns, "second_half", words.say("paper.second"), Row::second);
      columns.figure(
          "share_change",
          row -> {
            Part first = row.first();
            Part second = row.second();
            Double before = first == null ? null : first.share();
            Double now = second == null ? null : second.share();
            Digits digits = Digits.signed(1);
            return before == null || now == null
                ? new Cell.Figure(null, digits)
                : new Cell.Computed(
                    "100*({second_half_share}-{first_half_share})",
                    new Cell.Figure(100 * (now - before), digits));
          });
    }
    return new Table<>(
        "periods", words.say("sheet.periods"), columns.list(), rows(report, record, sentences));
  }

  private static void part(
      Columns<Row> columns, String key, String whose, Function<Row, @Nullable Part> part) {
    columns
        .count(
            key + "_anodes",
            row -> {
              Part its = part.apply(row);
              return its == null ? null : its.count();
            })
        .like("anodes")
        .whose(whose)
        .figure(
            key + "_share",
            SHARE,
            row -> {
              Part its = part.apply(row);
              return its == null ? null : its.share();
            })
        .like("reject_rate")
        .whose(whose)
        .figure(
            key + "_tonnes",
            Digits.plain(1),
            row -> {
              Part its = part.apply(row);
              return its == null ? null : its.tonnes();
            })
        .like("period_tonnes")
        .whose(whose);
  }

  private static List<Row> rows(
      AuditReport report, @Nullable CastingRecord record, Sentences sentences) {
    Words words = sentences.words();
    Instant middle = middle(report, record);
    List<Row> rows = new ArrayList<>();
    for (String wheel : report.log().wheels()) {
      RejectReport rejects = RejectReport.ofWheel(report.rejects(), wheel);
      WheelRecord its =
          record == null
              ? null
              : record.wheels().stream()
                  .filter(one -> one.wheel().equals(wheel))
                  .findFirst()
                  .orElse(null);
      Halves halves = its == null || middle == null ? null : new Halves(its, middle);
      String whose = sentences.nameWheels() ? wheel + ": " : "";
      Part all = cast(report, wheel, its);
      if (all != null) {
        rows.add(
            new Row(
                whose + words.say("period.cast"),
                all,
                halves == null ? null : halves.cast(true),
                halves == null ? null : halves.cast(false)));
      }
      if (rejects != null) {
        rows.add(
            new Row(
                whose + words.say("period.rejected"),
                new Part(rejects.all().rejected(), rejects.all().of(), rejects.tonnes()),
                halves == null ? null : halves.rejected(null, true),
                halves == null ? null : halves.rejected(null, false)));
        RejectText text = new RejectText(sentences);
        for (OfClass one : rejects.classes().stream().limit(MOST_CLASSES).toList()) {
          rows.add(
              new Row(
                  "– " + text.name(one),
                  new Part(one.rejected(), rejects.all().of(), one.tonnes()),
                  halves == null ? null : halves.rejected(one.name(), true),
                  halves == null ? null : halves.rejected(one.name(), false)));
        }
      }
    }
    return rows;
  }

  /** Anodes without a mass weigh what the others do on average. */
  private static @Nullable Part cast(
      AuditReport report, String wheel, @Nullable WheelRecord record) {
    Double mean = null;
    long count = record == null ? 0 : record.rows();
    for (CharacteristicReport one : report.characteristics()) {
      if (one.wheel().equals(wheel)) {
        count = record == null ? Math.max(count, one.overall().count()) : count;
        mean = one.name().equals(Quantity.MASS) ? (Double) one.overall().mean() : mean;
      }
    }
    if (record != null) {
      return new Halves(record, Instant.MAX).cast(true);
    }
    return count == 0 ? null : new Part(count, 0, mean == null ? null : mean * count / 1000);
  }

  /** Anodes of one kind, and what those weigh that have a mass. */
  private static final class Sum {
    private long count;
    private long weighed;
    private double kilograms;

    void add(double kg) {
      count++;
      if (!Double.isNaN(kg)) {
        weighed++;
        kilograms += kg;
      }
    }

    /** Those without a mass weigh what the others do on average. */
    Part part(long of) {
      return new Part(
          count, of, weighed == 0 ? null : (Double) (kilograms / weighed * count / 1000));
    }
  }

  /** One half: what was cast, what was rejected, and of that by defect. */
  private static final class Half {
    private final Sum cast = new Sum();
    private final Sum rejected = new Sum();
    private final Map<String, Sum> byDefect = new HashMap<>();

    /** How many have a disposition. */
    private long judged;
  }

  /** Counts a wheel's anodes before and after an instant, as its report does for all of them. */
  private static final class Halves {
    private final Half first = new Half();
    private final Half second = new Half();
    private final boolean hasDisposition;

    /**
     * @param middle the first half ends before it
     */
    Halves(WheelRecord wheel, Instant middle) {
      Setting disposition = wheel.disposition();
      IntColumn codes = disposition == null ? null : disposition.categories();
      hasDisposition = codes != null;
      boolean[] isRejected = new boolean[disposition == null ? 0 : disposition.labels().size()];
      for (int i = 0; i < isRejected.length && disposition != null; i++) {
        isRejected[i] = RejectReport.isRejected(disposition.labels().name(i));
      }
      Characteristic mass =
          wheel.characteristics().stream()
              .filter(one -> one.name().equals(Quantity.MASS))
              .findFirst()
              .orElse(null);
      for (int row = 0; row < wheel.rows(); row++) {
        boolean isFirst =
            middle.equals(Instant.MAX) || wheel.castAtMillis().get(row) < middle.toEpochMilli();
        Half half = isFirst ? first : second;
        double kg = mass == null ? Double.NaN : mass.values().get(row);
        half.cast.add(kg);
        int code = codes == null ? -1 : codes.get(row);
        if (code >= 0) {
          half.judged++;
          if (isRejected[code]) {
            half.rejected.add(kg);
            half.byDefect.computeIfAbsent(why(wheel, row), any -> new Sum()).add(kg);
          }
        }
      }
    }

    private static String why(WheelRecord wheel, int row) {
      Setting why = wheel.defect();
      IntColumn codes = why == null ? null : why.categories();
      return why == null || codes == null || codes.get(row) < 0
          ? ""
          : why.labels().name(codes.get(row));
    }

    private Half of(boolean isFirst) {
      return isFirst ? first : second;
    }

    Part cast(boolean isFirst) {
      return of(isFirst).cast.part(0);
    }

    /**
     * @param defect null for all of them; empty for those of which nobody wrote why
     */
    @Nullable Part rejected(@Nullable String defect, boolean isFirst) {
      if (!hasDisposition) {
        return null;
      }
      Half half = of(isFirst);
      Sum its = defect == null ? half.rejected : half.byDefect.getOrDefault(defect, new Sum());
      return its.part(half.judged);
    }
  }
}
