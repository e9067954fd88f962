package org.evenpour.report.workbook;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/** The same archive without the time at which it was made, so that like input gives like bytes. */
final class FixedZip {

  // Not the very first moment that an archive can name: that one also stands for "earlier", and is
  // then told in the machine's own zone.
  private static final LocalDateTime MOMENT = LocalDateTime.of(1980, 2, 1, 0, 0);

  private FixedZip() {}

  /** Copies an archive entry by entry and leaves the stream open. */
  static void copy(Path from, OutputStream to) throws IOException {
    ZipOutputStream out = new ZipOutputStream(to);
    try (ZipFile archive = new ZipFile(from.toFile())) {
      for (ZipEntry entry : Collections.list(archive.entries())) {
        ZipEntry fixed = new ZipEntry(entry.getName());
        fixed.setTimeLocal(MOMENT);
        out.putNextEntry(fixed);
        try (InputStream in = archive.getInputStream(entry)) {
          in.transferTo(out);
        }
        out.closeEntry();
      }
    }
    out.finish();
  }
}
