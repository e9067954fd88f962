package org.evenpour.view.screen;

import java.lang.management.ManagementFactory;
import java.util.HashMap;
import java.util.Map;
import javax.management.JMException;
import javax.management.ObjectName;

/** What the runtime says is still reachable. */
final class Live {
  private Live() {}

  /** How many instances of each class there are after a garbage collection. */
  static Map<String, Long> instances() throws JMException {
    String table =
        (String)
            ManagementFactory.getPlatformMBeanServer()
                .invoke(
                    new ObjectName("com.sun.management:type=DiagnosticCommand"),
                    "gcClassHistogram",
                    new Object[] {new String[0]},
                    new String[] {String[].class.getName()});
    Map<String, Long> counts = new HashMap<>();
    for (String line : table.split("\n", -1)) {
      // "  12:   3   168  org.evenpour.view.model.OpenedLog (…)"
      String[] cells = line.strip().split("\\s+", -1);
      if (cells.length >= 4 && cells[0].endsWith(":")) {
        counts.merge(cells[3], Long.valueOf(cells[1]), Long::sum);
      }
    }
    return counts;
  }
}
