package org.evenpour.view.screen;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import org.evenpour.casting.FileException;
import org.evenpour.intake.IntakeException;
import org.evenpour.view.model.Look;
import org.jspecify.annotations.Nullable;

/** Why something failed, as people read it. */
final class Reasons {
  private Reasons() {}

  static String of(@Nullable Throwable cause, Look look) {
    if (cause instanceof IntakeException intake) {
      return look.language().say(intake.remark());
    }
    if (cause instanceof OutOfMemoryError) {
      return look.say("failed.memory");
    }
    if (cause instanceof AccessDeniedException denied) {
      return look.say("failed.denied", denied.getFile());
    }
    if (cause instanceof NoSuchFileException missing) {
      return look.say("failed.missing", missing.getFile());
    }
    if (cause instanceof IOException io) {
      return look.language().say(FileException.why(io));
    }
    return look.say("failed.other", String.valueOf(cause));
  }
}
