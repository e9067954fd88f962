package org.evenpour.report.workbook;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.util.TempFileCreationStrategy;
import org.evenpour.casting.PartFiles;

/** Where POI keeps sheets until a workbook is whole: in files that no interrupt leaves behind. */
final class SheetFiles implements TempFileCreationStrategy {
  static final SheetFiles ONLY = new SheetFiles();

  private SheetFiles() {}

  @Override
  public File createTempFile(String prefix, String suffix) throws IOException {
    return PartFiles.temporary("evenpour-" + prefix, suffix).toFile();
  }

  @Override
  public File createTempDirectory(String prefix) throws IOException {
    Path folder = Files.createTempDirectory("evenpour-" + prefix);
    folder.toFile().deleteOnExit();
    return folder.toFile();
  }
}
