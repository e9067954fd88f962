package org.evenpour.report.workbook;

import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneId;
import org.evenpour.report.Reports;
import org.junit.jupiter.api.Test;

class AuditWorkbookTest {
  @Test
  void show() throws IOException {
    ZoneId zone = ZoneId.of("America/Santiago");
    AuditWorkbook.write(Reports.plant(), null, Path.of("/tmp/h/out/plant.xlsx"), zone);
    AuditWorkbook.write(Reports.nasty(), null, Path.of("/tmp/h/out/nasty.xlsx"), zone);
    AuditWorkbook.write(Reports.bare(), null, Path.of("/tmp/h/out/bare.xlsx"), zone);
    AuditWorkbook.write(Reports.plant(10_000), null, Path.of("/tmp/h/out/long.xlsx"), zone);
  }
}
