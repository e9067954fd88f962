package org.evenpour.report;

import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

class SummaryTest {
  @Test
  void show() {
    System.err.println(Summary.text(Reports.plant(), ZoneId.of("America/Santiago")));
    System.err.println(Summary.text(Reports.bare(), ZoneOffset.UTC));
    System.err.println(Summary.text(Reports.nasty(), ZoneOffset.UTC));
  }
}
