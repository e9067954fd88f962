package org.evenpour.command;

import java.io.IOException;
import java.nio.file.Path;
import org.evenpour.plant.PlantFiles;
import org.evenpour.store.Chain;
import org.evenpour.store.LineFile;
import org.evenpour.store.SigningKey;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** By what the lines of a file are checked when it is listed, and what is said of it. */
final class Checked {
  @Option(
      names = "--head",
      paramLabel = "HASH",
      description = "a hash that was listed before, and kept elsewhere: it must still be there")
  private @Nullable String head;

  @Option(
      names = "--signers",
      paramLabel = "F",
      description = "public keys: every line from the first signed one on must be signed by one")
  private @Nullable Path signers;

  /** Checks that a hash is there, and that lines are signed, as far as is asked for. */
  void check(LineFile lines) throws IOException {
    if (head != null) {
      lines.holds(head);
    }
    if (signers != null) {
      lines.isSignedBy(SigningKey.signers(PlantFiles.mustBeThere(signers)));
    }
  }

  /** That the lines are as they were written, in words; empty where there are none. */
  static String said(Path file, Chain.Head head) {
    if (head.lines() == 0) {
      return "";
    }
    String lines = head.lines() == 1 ? "1 line" : head.lines() + " lines";
    return file.getFileName()
        + ": "
        + lines
        + " as written"
        + (head.unhashed() == 0 ? "" : ", " + head.unhashed() + " of them from before hashes")
        + "; to be kept elsewhere, the last one's hash:\n"
        + head.hash()
        + "\n";
  }
}
