package org.evenpour.view.screen;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.picture.Ink;
import org.evenpour.picture.Picture;
import org.evenpour.picture.PictureFile;
import org.evenpour.report.FinishedFile;
import org.evenpour.report.workbook.AuditWorkbook;
import org.evenpour.view.model.Column;
import org.evenpour.view.model.CsvText;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.Look;
import org.evenpour.view.model.RecordRows;
import org.jspecify.annotations.Nullable;

/**
 * Something that can be saved from where it is seen.
 *
 * @param label what, in words
 * @param fileName proposed, with its ending
 * @param file writes the file, whole or not at all; runs on a worker thread with what was shown
 *     when it was chosen
 */
record Export(String label, String fileName, File file) {

  /** Width and height of saved pictures: a wide page. */
  private static final int WIDE = 1280;

  private static final int HIGH = 640;

  /** Writes a file. */
  interface File {
    /** Writes all of it. */
    void write(Path file) throws IOException;
  }

  /** A picture, as pixels and as a drawing; always on light ground, for paper. */
  static List<Export> picture(Look look, String title, String fileName, @Nullable Picture picture) {
    if (picture == null) {
      return List.of();
    }
    Ink ink = Ink.light(14);
    return List.of(
        new Export(
            look.say("export.png", title),
            fileName + ".png",
            file ->
                FinishedFile.write(file, out -> PictureFile.png(picture, WIDE, HIGH, ink, out))),
        new Export(
            look.say("export.svg", title),
            fileName + ".svg",
            file ->
                FinishedFile.write(file, out -> PictureFile.svg(picture, WIDE, HIGH, ink, out))));
  }

  /** A table as it is shown. */
  static <R> List<Export> table(Look look, String title, String fileName, DataTable<R> table) {
    List<Column<R>> columns = table.columns();
    List<R> rows = new ArrayList<>(table.shown());
    return List.of(
        new Export(
            look.say("export.csv", title),
            fileName + ".csv",
            file -> text(file, writer -> CsvText.write(columns, rows, look.language(), writer))));
  }

  /** The rows of the record. */
  static Export rows(Desk desk, RecordRows rows) {
    return new Export(
        desk.look().say("export.csv", desk.look().say("page.record")),
        "rows.csv",
        file -> text(file, rows::writeCsv));
  }

  /** The whole audit. */
  static Export workbook(Desk desk) {
    return new Export(
        desk.look().say("export.workbook"),
        "audit.xlsx",
        file -> AuditWorkbook.write(desk.report(), desk.log().record(), file, desk.log().zone()));
  }

  private interface Text {
    void write(Writer writer) throws IOException;
  }

  private static void text(Path file, Text text) throws IOException {
    FinishedFile.write(
        file,
        out -> {
          Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
          text.write(writer);
          writer.flush();
        });
  }
}
