package org.evenpour.plant;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.evenpour.audit.PlantRecords;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.FileException;
import org.evenpour.casting.GaugeFile;
import org.evenpour.casting.PlantAdvice;
import org.evenpour.control.LimitsBook;
import org.evenpour.feed.FileStamp;
import org.evenpour.intake.GaugeReader;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.Profiles;
import org.evenpour.store.CausesFile;
import org.evenpour.store.LimitsFile;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * What the plant says beside its logs, read again when a file changes. A new version that cannot be
 * used is told, and the one before stays in force.
 *
 * <p>A file counts as changed when two looks in a row find it the same and other than it was read:
 * one that is just being written is waited for. Owned by one thread at a time.
 */
public final class PlantNow {
  private final PlantFiles files;
  private Profiles profiles;
  private List<CastingEvent> happened;
  private LimitsBook book;
  private @Nullable Remark limitsWarning;
  private List<CauseMark> marks;
  private @Nullable Remark causesWarning;
  private PlantAdvice advice;
  private final List<GaugeFile> gauges = new ArrayList<>();
  private PlantRecords records;

  private final Version ofProfile;
  private final Version ofEvents;
  private final Version ofLimits;
  private final Version ofCauses;
  private final Version ofAdvice;
  private final List<Version> ofGauges = new ArrayList<>();

  /**
   * Reads all for the first time.
   *
   * @param files limits and causes need not be there yet
   * @throws IntakeException if a profile, an events file, a gauge or advice cannot be used
   * @throws IOException if limits or causes cannot
   */
  public PlantNow(PlantFiles files) throws IntakeException, IOException {
    this.files = files;
    ofProfile = new Version(files.profile());
    ofEvents = new Version(files.events());
    ofLimits = new Version(files.limitsFile().path());
    ofCauses = new Version(files.causesFile().path());
    ofAdvice = new Version(files.adviceFile());
    files.gauges().forEach(gauge -> ofGauges.add(new Version(gauge)));
    profiles = files.profiles();
    happened = files.happened(profiles);
    LimitsFile.Contents approved = files.limitsFile().read();
    book = approved.book();
    limitsWarning = approved.warning();
    CausesFile.Contents marked = files.causesFile().read();
    marks = marked.marks();
    causesWarning = marked.warning();
    advice = files.advice();
    for (Path gauge : files.gauges()) {
      gauges.add(GaugeReader.read(gauge, profiles));
    }
    records = new PlantRecords(book, gauges, marks, advice);
  }

  /** What is in force of the wheels. */
  public Profiles profiles() {
    return profiles;
  }

  /** The events in force. */
  public List<CastingEvent> events() {
    return happened;
  }

  /** What is kept beside the logs. */
  public PlantRecords records() {
    return records;
  }

  /** Why a new version is not in force, with what mends it; null where all are. */
  public @Nullable Remark trouble() {
    return Stream.of(
            Stream.of(ofProfile, ofEvents, ofLimits, ofCauses, ofAdvice).map(Version::trouble),
            ofGauges.stream().map(Version::trouble),
            Stream.of(limitsWarning, causesWarning))
        .flatMap(each -> each)
        .filter(Objects::nonNull)
        .reduce((all, one) -> Remark.of("live.both", all, one))
        .orElse(null);
  }

  /** Looks whether the files have changed, and reads those that have. */
  public void look() {
    Profiles before = profiles;
    ofProfile.readIfNew(() -> profiles = files.profiles());
    boolean isNewProfile = !profiles.equals(before);
    // Times without an offset are read in the profile's zone.
    ofEvents.readIfNew(isNewProfile, () -> happened = files.happened(profiles));
    boolean isNew =
        ofLimits.readIfNew(
            () -> {
              LimitsFile.Contents approved = files.limitsFile().read();
              book = approved.book();
              limitsWarning = approved.warning();
            });
    isNew |=
        ofCauses.readIfNew(
            () -> {
              CausesFile.Contents marked = files.causesFile().read();
              marks = marked.marks();
              causesWarning = marked.warning();
            });
    isNew |= ofAdvice.readIfNew(() -> advice = files.advice());
    for (int i = 0; i < ofGauges.size(); i++) {
      int at = i;
      isNew |=
          ofGauges
              .get(i)
              .readIfNew(
                  isNewProfile,
                  () -> gauges.set(at, GaugeReader.read(files.gauges().get(at), profiles)));
    }
    if (isNew) {
      records = new PlantRecords(book, gauges, marks, advice);
    }
  }

  /** Reads a file, and puts what it says in force. */
  @FunctionalInterface
  private interface Reading {
    void run() throws IntakeException, IOException;
  }

  /** Which version of a file was read. */
  private static final class Version {
    private final @Nullable Path file;
    private @Nullable FileStamp read;
    private @Nullable FileStamp lastLook;
    private @Nullable Remark trouble;

    Version(@Nullable Path file) {
      this.file = file;
      read = file == null ? null : FileStamp.of(file);
      lastLook = read;
    }

    @Nullable Remark trouble() {
      return trouble;
    }

    boolean readIfNew(Reading reading) {
      return readIfNew(false, reading);
    }

    /** Whether another version is in force now. */
    boolean readIfNew(boolean inAnyCase, Reading reading) {
      if (file == null || !(isNew() || inAnyCase)) {
        return false;
      }
      try {
        reading.run();
        trouble = null;
        return true;
      } catch (IntakeException e) {
        trouble = e.remark();
      } catch (IOException e) {
        trouble = FileException.why(e);
      }
      return false;
    }

    /** Whether there is a version that was not read, and is not just being written. */
    private boolean isNew() {
      FileStamp now = file == null ? null : FileStamp.of(file);
      boolean isSettled = Objects.equals(now, lastLook);
      lastLook = now;
      if (!isSettled || Objects.equals(now, read)) {
        return false;
      }
      read = now;
      return true;
    }
  }
}
