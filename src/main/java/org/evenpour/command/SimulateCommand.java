package org.evenpour.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.evenpour.casting.FileException;
import org.evenpour.simulate.Condition;
import org.evenpour.simulate.Fault;
import org.evenpour.simulate.LargeLog;
import org.evenpour.simulate.LiveSimulation;
import org.evenpour.simulate.LiveSimulation.Pace;
import org.evenpour.simulate.Scenario;
import org.evenpour.simulate.SimulatedPlant;
import org.evenpour.simulate.Simulation;
import org.evenpour.words.Remark;
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
  private static final String LARGE = "large-log.csv";

  @Spec private CommandSpec spec = CommandSpec.create();

  @Option(names = "--out", paramLabel = "DIR", description = "folder to write to")
  private @Nullable Path out;

  @Option(
      names = "--live",
      paramLabel = "FILE",
      description =
          "instead, grow a log row by row as a wheel casts; the file must not be there yet")
  private @Nullable Path live;

  @Option(
      names = "--speed",
      paramLabel = "N",
      description = "with --live: simulated seconds in a second; default: ${DEFAULT-VALUE}")
  private double speed = 1;

  @Option(
      names = "--history-hours",
      paramLabel = "H",
      description = "with --live: so much stands in the log at once; default: ${DEFAULT-VALUE}")
  private double historyHours = 24;

  @Option(
      names = "--plant",
      paramLabel = "PLANT",
      description = {
        "tordilla; or made: a plant that is made up from the seed, with other settings and faults",
        "each time, which only --seed, --size and --condition change. Default: tordilla"
      })
  private SimulatedPlant plant = SimulatedPlant.TORDILLA;

  @Option(
      names = "--condition",
      paramLabel = "CONDITION",
      description = {
        "ordinary: pours, scales, records and molds as plants have them; or ideal: normal pours, weights",
        "to 0.1 kg, nothing missing, molds that do not wear. Default: ordinary"
      })
  private Condition condition = Condition.ORDINARY;

  @Option(names = "--seed", paramLabel = "N", description = "default: ${DEFAULT-VALUE}")
  private long seed = 1;

  @Option(names = "--days", paramLabel = "D", description = "default: 7")
  private @Nullable Integer days;

  @Option(names = "--molds", paramLabel = "M", description = "default: 26")
  private @Nullable Integer molds;

  @Option(
      names = "--size",
      paramLabel = "SIGMA",
      description = "how large the faults are, in sigma from pour to pour (made: of their scope)")
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

  @Option(
      names = "--replace",
      description = "write over the files of an earlier run; without it they are left alone")
  private boolean replace;

  /** The faults' names, for the help text. */
  static final class FaultNames implements Iterable<String> {
    @Override
    public java.util.Iterator<String> iterator() {
      return Arrays.stream(Fault.values()).map(Fault::id).iterator();
    }
  }

  @Override
  public Integer call() throws IOException {
    if (rows != null && (!faults.isEmpty() || days != null || molds != null || size != null)) {
      throw new ParameterException(
          spec.commandLine(),
          "--rows writes a plain log; leave --fault, --days, --molds and --size out");
    }
    if (live != null && (out != null || rows != null)) {
      throw new ParameterException(
          spec.commandLine(), "--live grows one log; leave --out and --rows out");
    }
    Path growing = live;
    if (growing != null && plant == SimulatedPlant.TORDILLA) {
      return grow(growing);
    }
    Path folder = out;
    if (folder == null) {
      throw new ParameterException(
          spec.commandLine(), "where to? give --out DIR, or --live FILE for a log that grows");
    }
    for (String name : rows == null ? Simulation.FILES : List.of(LARGE)) {
      mustBeNew(folder.resolve(name));
    }
    try {
      return plant == SimulatedPlant.MADE ? writeMade(folder) : write(folder);
    } catch (IllegalArgumentException e) { // what was asked for cannot be simulated
      throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e);
    } catch (FileSystemException | FileException named) {
      throw named;
    } catch (IOException e) {
      throw new FileException(Remark.of("at.file", folder, FileException.reason(e)), e);
    }
  }

  private void mustBeNew(Path file) throws FileAlreadyExistsException {
    if (!replace && Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new FileAlreadyExistsException(
          file.toString(),
          null,
          "there is such a file already, and nothing is written over without --replace");
    }
  }

  private int grow(Path file) throws IOException {
    mustBeNew(file);
    Files.createDirectories(file.toAbsolutePath().getParent());
    PrintWriter screen = spec.commandLine().getOut();
    try {
      Pace pace =
          new Pace(
              speed, Duration.ofSeconds(Math.round(3600 * historyHours)), Duration.ofSeconds(20));
      Path profile = file.resolveSibling(Simulation.PROFILE);
      if (Files.notExists(profile)) {
        Files.writeString(profile, LiveSimulation.profile(scenario()));
      }
      screen.println(
          "growing " + file + " at " + speed + " times the wheel's pace; Ctrl-C ends it");
      screen.println("see it with: evenpour view --follow " + file + " --profile " + profile);
      new LiveSimulation(
              file, scenario(), pace, Clock.systemUTC(), length -> Thread.sleep(length.toMillis()))
          .run(count -> {});
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return Main.DONE;
  }

  private int writeMade(Path folder) throws IOException {
    if (live != null || days != null || molds != null || rows != null || !faults.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(),
          "a made plant has its own days, molds and faults; give --out, --seed, --size and --condition only");
    }
    Simulation.Summary summary = SimulatedPlant.MADE.write(folder, seed, size, condition);
    tell(folder, summary, "see " + Simulation.TRUTH);
    return Main.DONE;
  }

  private int write(Path folder) throws IOException {
    if (rows != null) {
      if (rows < 0) {
        throw new IllegalArgumentException("--rows must be 0 or more, not " + rows);
      }
      Files.createDirectories(folder);
      LargeLog.write(folder.resolve(LARGE), rows, seed);
      spec.commandLine().getOut().println("wrote " + folder.resolve(LARGE));
      return Main.DONE;
    }
    Scenario scenario = scenario();
    Simulation.Summary summary = Simulation.write(folder, scenario);
    tell(
        folder,
        summary,
        scenario.faults().stream().map(Fault::id).collect(Collectors.joining(", ")));
    return Main.DONE;
  }

  private void tell(Path folder, Simulation.Summary summary, String planted) {
    spec.commandLine()
        .getOut()
        .println(
            "wrote "
                + folder.resolve(Simulation.LOG)
                + ": "
                + summary.anodes()
                + " anodes, "
                + summary.turns()
                + " turns; planted: "
                + planted);
  }

  private Scenario scenario() {
    Scenario scenario = Scenario.week(seed).withCondition(condition);
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
