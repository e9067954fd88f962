package org.evenpour.view.screen;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import org.evenpour.casting.FileException;
import org.evenpour.picture.Ink;
import org.evenpour.picture.PaperFile;
import org.evenpour.picture.Picture;
import org.evenpour.picture.PictureFile;
import org.evenpour.picture.Sheet;
import org.evenpour.report.FinishedFile;
import org.evenpour.report.workbook.AuditWorkbook;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.Look;
import org.evenpour.view.model.MoldSheet;
import org.evenpour.view.model.OpenedLog;
import org.evenpour.view.model.RecordRows;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * Something that can be saved from where it is seen.
 *
 * @param label what, in words
 * @param fileName proposed, with its ending
 * @param shown takes down what is shown when it is chosen, on the event thread; what comes of that
 *     writes the file on a worker thread, whole or not at all
 */
record Export(String label, String fileName, Supplier<File> shown) {

  /** Width and height of saved pictures: a wide page. */
  private static final int WIDE = 1280;

  private static final int HIGH = 640;

  /** Writes a file. */
  interface File {
    /**
     * Writes all of it.
     *
     * @param progress is told the share that is written; throws where it is to be given up
     */
    void write(Path file, Progress progress) throws IOException;
  }

  /** Somebody waits. */
  interface Progress {
    /** Nobody does. */
    Progress NONE = share -> {};

    /** So much is written, from 0 to 1. */
    void at(double share);
  }

  /** A picture, as pixels and as a drawing; always on light ground, for paper. */
  static List<Export> picture(Look look, String title, String fileName, PictureView view) {
    return picture(look, title, fileName, view::shown);
  }

  /**
   * The same of a picture that is not on the screen.
   *
   * @param shown takes down what is shown on the event thread; the picture is made of that on a
   *     worker
   */
  static List<Export> picture(
      Look look,
      String title,
      String fileName,
      Supplier<Supplier<? extends @Nullable Picture>> shown) {
    Ink ink = Ink.light(14);
    return List.of(
        new Export(
            look.say("export.png", title),
            fileName + ".png",
            () -> {
              Supplier<? extends @Nullable Picture> its = shown.get();
              return (file, progress) ->
                  FinishedFile.write(file, out -> PictureFile.png(made(its), WIDE, HIGH, ink, out));
            }),
        new Export(
            look.say("export.svg", title),
            fileName + ".svg",
            () -> {
              Supplier<? extends @Nullable Picture> its = shown.get();
              return (file, progress) ->
                  FinishedFile.write(file, out -> PictureFile.svg(made(its), WIDE, HIGH, ink, out));
            }));
  }

  private static Picture made(Supplier<? extends @Nullable Picture> shown) throws IOException {
    Picture picture = shown.get();
    if (picture == null) {
      throw new FileException(Remark.of("out.nothing"));
    }
    return picture;
  }

  /** A table as it is shown. */
  static <R> List<Export> table(Look look, String title, String fileName, DataTable<R> table) {
    return List.of(
        new Export(
            look.say("export.csv", title),
            fileName + ".csv",
            () -> {
              String text = table.text();
              return (file, progress) -> text(file, writer -> writer.write(text));
            }));
  }

  /** The rows of the record. */
  static Export rows(Desk desk) {
    return new Export(
        desk.look().say("export.csv", desk.look().say("page.record")),
        "rows.csv",
        () -> {
          RecordRows rows = RecordRows.of(desk.asNow());
          return (file, progress) -> text(file, rows::writeCsv);
        });
  }

  /** The whole audit. */
  static Export workbook(Desk desk) {
    return new Export(
        desk.look().say("export.workbook"),
        "audit.xlsx",
        () -> {
          OpenedLog log = desk.log();
          double anodes = Math.max(1, log.record().rowsKept());
          return (file, progress) ->
              AuditWorkbook.write(
                  log.report(),
                  log.record(),
                  file,
                  log.zone(),
                  desk.look().language().report(),
                  written -> progress.at(written / anodes));
        });
  }

  /** The molds to act on, for whoever does it, on paper. */
  static Export moldSheet(Desk desk) {
    return new Export(
        desk.look().say("export.sheet"),
        desk.look().say("export.sheet.file"),
        () -> {
          Desk now = desk.asNow();
          return (file, progress) -> {
            Sheet sheet = MoldSheet.of(now);
            FinishedFile.write(
                file,
                out ->
                    PaperFile.write(sheet.pages(), Sheet.WIDTH, Sheet.HEIGHT, Ink.light(10), out));
          };
        });
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
