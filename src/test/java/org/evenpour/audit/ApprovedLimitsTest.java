package org.evenpour.audit;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.audit.ProposedLimits.LeaveOut;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Specification;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.IntColumn;
import org.evenpour.column.Labels;
import org.evenpour.column.Pages;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsBook.Retirement;
import org.evenpour.control.LimitsBook.SpecificationRevision;
import org.evenpour.control.LimitsVersion;
import org.evenpour.control.LimitsVersion.LeftOut;
import org.evenpour.control.LimitsVersion.Reason;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.LimitsUsed;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.words.Remark;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Audits of the committed sample by limits that were approved for all of its time or a part. */
class ApprovedLimitsTest {
  private static final Instant EARLY = Instant.parse("2020-01-01T00:00:00Z");
  private static final Instant MIDWAY = Instant.parse("2026-03-05T03:00:00Z");
  private static CastingRecord record;

  @BeforeAll
  static void readsTheSample() throws Exception {
    CastingRecord all = Sample.read(Sample.TORDILLA);
    // Without events and serials no mold is changed: nothing of it is left out.
    WheelRecord wheel = withoutSerials(all.wheels().get(0), "T1");
    record =
        new CastingRecord(
            all.logs(), List.of(wheel), List.of(), all.rowsRead(), 0, List.of(), List.of());
  }

  private static WheelRecord withoutSerials(WheelRecord one, String name) {
    IntColumn none = new IntColumn(Pages.ofMemory());
    for (int i = 0; i < one.rows(); i++) {
      none.add(-1);
    }
    return new WheelRecord(
        name,
        one.profile(),
        one.molds(),
        one.sides(),
        new Labels(),
        one.castAtMillis(),
        one.turn(),
        one.mold(),
        one.side(),
        none,
        one.line(),
        one.characteristics(),
        one.points(),
        one.settings(),
        one.disposition(),
        one.defect(),
        null);
  }

  private static LimitsBook approved(Instant validFrom, List<ProposedLimits> proposed) {
    List<LimitsVersion> versions = new ArrayList<>();
    for (ProposedLimits one : proposed) {
      LimitsVersion draft = one.draft();
      if (draft != null) {
        versions.add(draft.numbered(1).approved(validFrom, MIDWAY, "A. Rojas", "sound"));
      }
    }
    return new LimitsBook(versions, List.of(), List.of());
  }

  private static List<ProposedLimits> ofTheFirstDays() {
    return ProposedLimits.of(record, null, MIDWAY, List.of());
  }

  private static CharacteristicReport mass(AuditReport report) {
    return report.characteristics().stream()
        .filter(one -> one.name().equals("mass"))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void limitsOfTheWholeRecordFindWhatTheAuditsOwnFind() {
    AuditReport own = Audit.run(record);
    AuditReport approved =
        Audit.run(
            record,
            PlantRecords.of(approved(EARLY, ProposedLimits.of(record, null, null, List.of()))));

    assertThat(own.signals()).isNotEmpty();
    assertThat(approved.signals()).isEqualTo(own.signals());
    assertThat(mass(approved).wheelChart()).isEqualTo(mass(own).wheelChart());
    assertThat(mass(approved).monitoring().source()).startsWith("approved: version 1, by A. Rojas");
    assertThat(approved.notes())
        .extracting(Remark::toString)
        .noneMatch(note -> note.contains("none is approved"))
        .anyMatch(note -> note.contains("version 1, approved by A. Rojas"));
  }

  @Test
  void judgesTheSameEachTime() {
    LimitsBook book = approved(MIDWAY, ofTheFirstDays());

    assertThat(Audit.run(record, PlantRecords.of(book)))
        .isEqualTo(Audit.run(record, PlantRecords.of(book)));
  }

  @Test
  void saysWhichTurnsWereJudgedByWhat() {
    LimitsBook book = approved(MIDWAY, ofTheFirstDays());
    AuditReport report = Audit.run(record, PlantRecords.of(book));
    List<LimitsUsed> used = mass(report).monitoring().used();

    assertThat(used).extracting(LimitsUsed::source).containsExactly("proposed", "approved");
    assertThat(used).extracting(LimitsUsed::who).containsExactly(null, "A. Rojas");
    assertThat(used.get(0).lastTurn()).isEqualTo(used.get(1).firstTurn() - 1);
    assertThat(used.stream().mapToInt(LimitsUsed::turns).sum()).isEqualTo(report.log().turns());
    assertThat(used.get(0).firstCastAt()).isBefore(MIDWAY);
    assertThat(used.get(1).firstCastAt()).isAfterOrEqualTo(MIDWAY);
    LimitsVersion version = book.versions().get(0);
    assertThat(used.get(1).pourSigma()).isEqualTo(version.limits().pour().sigma());
    for (Signal signal : report.signals()) {
      boolean isBefore = signal.firstCastAt().isBefore(MIDWAY);
      assertThat(isBefore && signal.open()).as("ends where the version begins").isFalse();
      assertThat(signal.sinceAt().isBefore(MIDWAY)).as(signal.id()).isEqualTo(isBefore);
    }
  }

  @Test
  void proposesAgainFromTheTurnsThatFollowARetirement() {
    LimitsBook book = approved(EARLY, ofTheFirstDays());
    LimitsBook retired =
        new LimitsBook(
            book.versions(),
            List.of(new Retirement("T1", "mass", 1, MIDWAY, MIDWAY, "A. Rojas", "new ladle")),
            List.of());
    AuditReport report = Audit.run(record, PlantRecords.of(retired));

    assertThat(mass(report).monitoring().used())
        .extracting(LimitsUsed::source)
        .containsExactly("approved", "proposed");
    assertThat(mass(report).monitoring().source()).startsWith("proposed by this audit");
    assertThat(report.characteristics().get(1).monitoring().used()).hasSize(1);
  }

  @Test
  void judgesAWheelByItsOwnVersionOnly() {
    LimitsBook book = approved(EARLY, ofTheFirstDays());
    WheelRecord one = record.wheels().get(0);
    WheelRecord two = withoutSerials(one, "T2");
    AuditReport report =
        Audit.run(
            new CastingRecord(
                record.logs(), List.of(one, two), List.of(), 1, 0, List.of(), List.of()),
            PlantRecords.of(book));

    assertThat(report.characteristics())
        .allSatisfy(
            c ->
                assertThat(c.monitoring().used())
                    .extracting(LimitsUsed::source)
                    .containsExactly(c.wheel().equals("T1") ? "approved" : "proposed"));
  }

  @Test
  void leavesOutWhatWasSaidAndSaysWhatElse() {
    Instant from = Instant.parse("2026-03-04T10:00:00Z");
    Instant to = Instant.parse("2026-03-04T13:00:00Z");
    LimitsVersion all = requireNonNull(ofTheFirstDays().get(0).draft());
    LimitsVersion less =
        requireNonNull(
            ProposedLimits.of(
                    record, null, MIDWAY, List.of(new LeaveOut(from, to, "ladle relined")))
                .get(0)
                .draft());

    List<LeftOut> byHand =
        less.leftOut().stream().filter(one -> one.reason() == Reason.BY_HAND).toList();
    assertThat(byHand).isNotEmpty().allMatch(one -> one.note().equals("ladle relined"));
    long count = byHand.stream().mapToLong(LeftOut::anodes).sum();
    assertThat(less.base().anodes()).isEqualTo(all.base().anodes() - count);
    assertThat(all.leftOut()).extracting(LeftOut::reason).contains(Reason.START_UP);
    assertThat(all.base().lastCastAt()).isBefore(MIDWAY);
  }

  @Test
  void aMoldThatWasChangedCountsFromItsChangeOn() throws Exception {
    CastingRecord with = Sample.read(Sample.TORDILLA);
    boolean any = false;
    for (ProposedLimits one : ProposedLimits.of(with, null, null, List.of())) {
      LimitsVersion draft = requireNonNull(one.draft());
      any |= draft.leftOut().stream().anyMatch(each -> each.reason() == Reason.OLD_MOLD);
    }
    boolean isChanged =
        with.events().stream()
            .anyMatch(e -> e.kind().equals("mold_changed") || e.kind().equals("mold_dressed"));
    assertThat(any).isEqualTo(isChanged);
  }

  @Test
  void judgesEachAnodeByTheSpecificationOfItsTime() {
    Specification narrow = new Specification(389.0, 390.0, 391.0);
    LimitsBook book =
        new LimitsBook(
            List.of(),
            List.of(),
            List.of(
                new SpecificationRevision(
                    null, "mass", narrow, "kg", MIDWAY, MIDWAY, "A. Rojas", "contract")));
    AuditReport report = Audit.run(record, PlantRecords.of(book));
    CharacteristicReport mass = mass(report);
    WheelRecord wheel = record.wheels().get(0);
    Specification before = wheel.profile().specification("mass");
    long outside = 0;
    long outsideSince = 0;
    long since = 0;
    for (int row = 0; row < wheel.rows(); row++) {
      double x = wheel.anode(row).values()[0];
      boolean isNew = wheel.castAtMillis().get(row) >= MIDWAY.toEpochMilli();
      outside += !Double.isNaN(x) && (isNew ? narrow : before).excludes(x) ? 1 : 0;
      outsideSince += isNew && narrow.excludes(x) ? 1 : 0;
      since += isNew && !Double.isNaN(x) ? 1 : 0;
    }

    assertThat(wheel.characteristics().get(0).name()).isEqualTo("mass");
    assertThat(mass.molds().stream().mapToLong(m -> m.outside() == null ? 0 : m.outside()).sum())
        .isEqualTo(outside);
    assertThat(mass.specification()).isEqualTo(narrow);
    assertThat(mass.specifications()).hasSize(2);
    assertThat(mass.specifications().get(1).anodes()).isEqualTo(since);
    assertThat(requireNonNull(mass.overall().capability()).fractionOutsideObserved())
        .isEqualTo((double) outsideSince / since);
    assertThat(report.notes())
        .anyMatch(note -> note.toString().contains("capability is of these alone"));
    assertThat(report.characteristics().get(1).specifications()).isEmpty();
  }
}
