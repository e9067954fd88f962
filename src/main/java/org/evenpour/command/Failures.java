package org.evenpour.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import org.evenpour.intake.IntakeException;
import picocli.CommandLine;

/** What went wrong, in one line on standard error. */
final class Failures {
  private Failures() {}

  static int explain(Exception failure, CommandLine command, CommandLine.ParseResult parsed) {
    command.getErr().println("evenpour: " + line(failure));
    return Main.NOT_DONE;
  }

  private static String line(Exception failure) {
    if (failure instanceof IntakeException) {
      return String.valueOf(failure.getMessage());
    }
    if (failure instanceof FileAlreadyExistsException file) {
      return file.getFile() + ": " + file.getReason() + "; name another";
    }
    if (failure instanceof FileSystemException file) {
      String reason = file.getReason();
      String what = reason != null ? reason : file.getClass().getSimpleName();
      return file.getFile() + ": " + what + "; check that the folder exists and has room";
    }
    if (failure instanceof IOException || failure instanceof UncheckedIOException) {
      String message = String.valueOf(failure.getMessage());
      return message.contains("; ")
          ? message
          : message + "; check that the disk is there and has room";
    }
    // A fault of ours: the first line for people, the rest for whoever mends it.
    StackTraceElement[] trace = failure.getStackTrace();
    return "internal error, please report it: "
        + failure
        + (trace.length == 0 ? "" : " at " + trace[0]);
  }
}
