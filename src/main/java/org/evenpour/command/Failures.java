package org.evenpour.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import org.evenpour.casting.FileException;
import org.evenpour.intake.IntakeException;

/** What went wrong, in one line on standard error. */
final class Failures {
  private Failures() {}

  static int explain(Throwable failure, PrintWriter errors) {
    errors.println("evenpour: " + line(failure));
    return Main.NOT_DONE;
  }

  private static String line(Throwable failure) {
    if (isOfMemory(failure)) {
      return "there is not enough memory for this; give more, such as with"
          + " JAVA_TOOL_OPTIONS=-Xmx4g, or read a shorter period";
    }
    Throwable cause = failure.getCause();
    if (failure instanceof UncheckedIOException && cause != null) {
      return line(cause);
    }
    if (failure instanceof IntakeException) {
      return String.valueOf(failure.getMessage());
    }
    if (failure instanceof FileAlreadyExistsException file && file.getReason() != null) {
      return file.getFile() + ": " + file.getReason() + "; name another";
    }
    if (failure instanceof IOException io) {
      String message =
          io.getMessage() != null && io.getMessage().contains("; ")
              ? io.getMessage()
              : FileException.why(io).toString();
      return message.contains("; ")
          ? message
          : message + "; check that the folder is there, may be used and has room";
    }
    // A fault of ours: the first line for people, the rest for whoever mends it.
    StackTraceElement[] trace = failure.getStackTrace();
    return "internal error, please report it: "
        + failure
        + (trace.length == 0 ? "" : " at " + trace[0]);
  }

  private static boolean isOfMemory(Throwable failure) {
    for (Throwable one = failure; one != null; one = one.getCause()) {
      if (one instanceof OutOfMemoryError) {
        return true;
      }
    }
    return false;
  }
}
