package org.evenpour.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.evenpour.simulate.Fault;
import org.evenpour.simulate.LargeLog;
import org.evenpour.simulate.Scenario;
import org.evenpour.simulate.Simulation;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code evenpour simulate}: a fictional wheel with planted faults. */
@Command(
    name = "simulate",
    description = {
      "Writes a fictional wheel's log, events, profile and the truth: which faults are where.",
      "The same seed gives the same files."
    },
    mixinStandardHelpOptions = true)
final class SimulateCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Option(names = "--out", required = true, paramLabel = "DIR", description = "folder to write to")
  private Path out = Path.of(".");

  @Option(names = "--seed", paramLabel = "N", description = "default: ${DEFAULT-VALUE}")
  private long seed = 1;

  @Option(names = "--days", paramLabel = "D", description = "default: 7")
  private @Nullable Integer days;

  @Option(names = "--molds", paramLabel = "M", description = "default: 26")
  private @Nullable Integer molds;

  @Option(
      names = "--size",
      paramLabel = "SIGMA",
      description = "how large the faults are, in sigma from pour to pour")
  private @Nullable Double size;

  @Option(
      names = "--fault",
      paramLabel = "NAME",
      completionCandidates = FaultNames.class,
      description = {
        "plant this fault; may be given several times. Without it all are planted; 'none' plants none.",
        "One of: ${COMPLETION-CANDIDATES}"
      })
  private List<String> faults = new ArrayList<>();

  @Option(
      names = "--rows",
      paramLabel = "N",
      description = "instead, write a plain large log of N rows for measuring: large-log.csv")
  private @Nullable Integer rows;

  /** The faults' names, for the help text. */
  static final class FaultNames implements Iterable<String> {
    @Override
    public java.util.Iterator<String> iterator() {
      return Arrays.stream(Fault.values()).map(Fault::id).iterator();
    }
  }

  @Override
  public Integer call() throws IOException {
    if (rows != null) {
      Files.createDirectories(out);
      LargeLog.write(out.resolve("large-log.csv"), rows, seed);
      spec.commandLine().getOut().println("wrote " + out.resolve("large-log.csv"));
      return Main.DONE;
    }
    Scenario scenario;
    try {
      scenario = scenario();
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e);
    }
    Simulation.Summary summary = Simulation.write(out, scenario);
    spec.commandLine()
        .getOut()
        .println(
            "wrote "
                + out.resolve(Simulation.LOG)
                + ": "
                + summary.anodes()
                + " anodes, "
                + summary.turns()
                + " turns; planted: "
                + scenario.faults().stream().map(Fault::id).collect(Collectors.joining(", ")));
    return Main.DONE;
  }

  private Scenario scenario() {
    Scenario scenario = Scenario.week(seed);
    if (days != null) {
      scenario = scenario.withDays(days);
    }
    if (molds != null) {
      scenario = scenario.withMolds(molds);
    }
    if (size != null) {
      scenario = scenario.withSizeSigmas(size);
    }
    if (faults.isEmpty()) {
      scenario = scenario.withFaults(List.of(Fault.values()));
    } else {
      List<Fault> planted = new ArrayList<>();
      for (String name : faults) {
        if (!name.equals("none")) {
          planted.add(
              Fault.ofId(name)
                  .orElseThrow(
                      () ->
                          new IllegalArgumentException(
                              "there is no fault '"
                                  + name
                                  + "'; one of "
                                  + String.join(", ", new FaultNames()))));
        }
      }
      scenario = scenario.withFaults(planted);
    }
    return scenario;
  }
}
