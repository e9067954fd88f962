package org.evenpour.live;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.FileException;
import org.evenpour.casting.Remark;
import org.evenpour.control.LimitsBook;
import org.evenpour.feed.FileStamp;
import org.evenpour.intake.EventsReader;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.store.LimitsFile;
import org.jspecify.annotations.Nullable;

/**
 * What the plant says beside the log: the wheels' profile and the events, which are read again when
 * their files change. A new version that cannot be used is told, and the one before stays in force.
 *
 * <p>A file counts as changed when two looks in a row find it the same and other than it was read:
 * one that is just being written is waited for. Owned by one thread at a time.
 */
public final class PlantFiles {
  private final @Nullable Path profile;
  private final @Nullable Path events;
  private final @Nullable LimitsFile limits;
  private LimitsBook book = LimitsBook.NONE;
  private @Nullable Remark limitsWarning;
  private Profiles profiles = Profiles.NONE;
  private List<CastingEvent> written = List.of();
  private final Version ofProfile;
  private final Version ofEvents;
  private final Version ofLimits;

  private PlantFiles(@Nullable Path profile, @Nullable Path events, @Nullable LimitsFile limits)
      throws IntakeException, IOException {
    this.limits = limits;
    ofLimits = new Version(limits == null ? null : limits.path());

    this.profile = profile;
    this.events = events;
    ofProfile = new Version(profile);
    ofEvents = new Version(events);
    if (profile != null) {
      profiles = ProfileReader.read(profile);
    }
    if (events != null) {
      written = EventsReader.read(events, profiles);
    }
    readLimits();
  }

  private void readLimits() throws IOException {
    if (limits != null) {
      LimitsFile.Contents contents = limits.read();
      book = contents.book();
      limitsWarning = contents.warning();
    }
  }

  /**
   * Reads both for the first time.
   *
   * @param profile null = there is none
   * @param events null = there are none
   */
  public static PlantFiles read(@Nullable Path profile, @Nullable Path events)
      throws IntakeException {
    try {
      return new PlantFiles(profile, events, null);
    } catch (IOException e) {
      throw new UncheckedIOException(e); // of limits, and there are none
    }
  }

  /**
   * Reads all for the first time.
   *
   * @param profile null = there is none
   * @param events null = there are none
   * @param limits need not be there yet
   */
  public static PlantFiles read(@Nullable Path profile, @Nullable Path events, LimitsFile limits)
      throws IntakeException, IOException {
    return new PlantFiles(profile, events, limits);
  }

  /** What is in force of the wheels. */
  public Profiles profiles() {
    return profiles;
  }

  /** The events in force. */
  public List<CastingEvent> events() {
    return written;
  }

  /** The limits that were approved. */
  public LimitsBook book() {
    return book;
  }

  /** Why a new version is not in force, with what mends it; null where all are. */
  public @Nullable Remark trouble() {
    Remark all = null;
    for (Remark one :
        Arrays.asList(ofProfile.trouble, ofEvents.trouble, ofLimits.trouble, limitsWarning)) {
      all = all == null ? one : one == null ? all : Remark.of("live.both", all, one);
    }
    return all;
  }

  /** Looks whether the files have changed, and reads those that have. */
  void look() {
    boolean isNewProfile = false;
    if (profile != null && ofProfile.isNew()) {
      try {
        Profiles fresh = ProfileReader.read(profile);
        isNewProfile = !fresh.equals(profiles);
        profiles = fresh;
        ofProfile.trouble = null;
      } catch (IntakeException e) {
        ofProfile.trouble = e.remark();
      }
    }
    if (ofLimits.isNew()) {
      try {
        readLimits();
        ofLimits.trouble = null;
      } catch (IOException e) {
        ofLimits.trouble = FileException.why(e);
      }
    }
    // Times without an offset are read in the profile's zone.
    if (events != null && (ofEvents.isNew() || isNewProfile)) {
      try {
        written = EventsReader.read(events, profiles);
        ofEvents.trouble = null;
      } catch (IntakeException e) {
        ofEvents.trouble = e.remark();
      }
    }
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

    /** Whether there is a version that was not read, and is not just being written. */
    boolean isNew() {
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
