package org.evenpour.command;

import java.nio.file.Path;
import java.util.List;
import org.evenpour.plant.PlantFiles;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The files beside the logs that are audited or shown, as they are typed. */
final class PlantOptions {
  @Mixin private LimitsPlace limits = new LimitsPlace();

  @Option(
      names = "--events",
      paramLabel = "F",
      description = "what was done at the wheel (CSV: at,wheel,mold,event,note)")
  private @Nullable Path events;

  @Option(
      names = "--causes",
      paramLabel = "F",
      description =
          "marked causes; default: <profile>.causes.jsonl, or <log>.causes.jsonl; see evenpour"
              + " causes")
  private @Nullable Path causes;

  /** With these logs and gauges. */
  PlantFiles with(List<Path> logs, List<Path> gauges) {
    return limits.with(logs, events, gauges, causes);
  }
}
