package org.evenpour.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import org.evenpour.audit.Audit;
import org.evenpour.audit.Causes;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.casting.CauseMark.Verdict;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.SetAside;
import org.evenpour.plant.PlantFiles;
import org.evenpour.plant.SeenFile;
import org.evenpour.report.CausesText;
import org.evenpour.store.CausesFile;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code evenpour causes}: what people found to be the causes of signals. */
@Command(
    name = "causes",
    description = {
      "Causes of signals that people marked right or wrong, and how often each came.",
      "What goes with a signal is evidence; whether it was the cause, a person says here."
    },
    subcommands = {
      CausesCommand.Signals.class,
      CausesCommand.MarkOne.class,
      CausesCommand.Show.class
    },
    mixinStandardHelpOptions = true)
final class CausesCommand implements Runnable {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "say what: signals, mark or list");
  }

  private static AuditReport audited(CommandSpec spec, LogsToAudit.Plant plant)
      throws IntakeException, IOException {
    try (SetAside nowhere = SetAside.nowhere()) {
      return Audit.run(plant.read(spec, nowhere), plant.kept().records());
    }
  }

  /** {@code evenpour causes signals}. */
  @Command(
      name = "signals",
      description = {
        "Lists the signals of logs with their ids, what goes with each, and how it was marked.",
        "Ids hold for these very arguments; another stretch of the log has others."
      },
      mixinStandardHelpOptions = true)
  static final class Signals implements Callable<Integer> {
    @Spec private CommandSpec spec = CommandSpec.create();
    @Mixin private LogsToAudit logs = new LogsToAudit();

    @Override
    public Integer call() throws IntakeException, IOException {
      LogsToAudit.Plant plant = logs.plant(spec);
      AuditReport report = audited(spec, plant);
      spec.commandLine().getOut().print(new CausesText(plant.zone()).signals(report));
      spec.commandLine().getOut().flush();
      return Main.DONE;
    }
  }

  /** What a person says; one of the three. */
  static final class Said {
    @Option(names = "--right", description = "it was this")
    private boolean right;

    @Option(names = "--wrong", description = "it was not this")
    private boolean wrong;

    @Option(names = "--take-back", description = "neither; an earlier mark is taken back")
    private boolean takeBack;

    Verdict verdict() {
      return right ? Verdict.RIGHT : wrong ? Verdict.WRONG : Verdict.OPEN;
    }
  }

  /** Which cause; one of the three. */
  static final class Which {
    @Option(
        names = "--setting",
        paramLabel = "NAME",
        description = "a setting: its column in the log, such as wash_volume_ml")
    private @Nullable String setting;

    @Option(
        names = "--event",
        paramLabel = "KIND",
        description = "an event: its kind, such as nozzle_cleaned")
    private @Nullable String event;

    @Option(
        names = "--other",
        paramLabel = "TEXT",
        description = "a cause that no record shows, in words, such as \"scale drifted\"")
    private @Nullable String words;
  }

  /** {@code evenpour causes mark}. */
  @Command(
      name = "mark",
      description = {
        "Marks a cause of a signal right or wrong, with who says so and why.",
        "The mark is found again by place and time, whatever stretch is audited later."
      },
      mixinStandardHelpOptions = true)
  static final class MarkOne implements Callable<Integer> {
    @Spec private CommandSpec spec = CommandSpec.create();
    @Mixin private LogsToAudit logs = new LogsToAudit();
    @Mixin private Signed signed = new Signed();

    @Option(
        names = "--signal",
        required = true,
        paramLabel = "ID",
        description = "the signal's id, as evenpour causes signals and the workbook show it")
    private String id = "";

    @ArgGroup(multiplicity = "1")
    private Which which = new Which();

    @ArgGroup(multiplicity = "1")
    private Said said = new Said();

    @Override
    public Integer call() throws IntakeException, IOException {
      String who = signed.who(spec);
      String why = signed.why(spec);
      CausesFile file = new CausesFile(logs.files().causesFile().path(), signed.key());
      LogsToAudit.Plant plant = logs.plant(spec);
      AuditReport report = audited(spec, plant);
      Signal signal = signal(report);
      Cause cause = cause(report, signal);
      Verdict verdict = said.verdict();
      boolean isMarked =
          report.causes().of(signal).stream().anyMatch(one -> one.cause().isSame(cause));
      if (verdict == Verdict.OPEN && !isMarked) {
        throw new ParameterException(
            spec.commandLine(),
            "--take-back: \"" + cause.name() + "\" is not marked for " + id + "; nothing was done");
      }
      AuditReport marked =
          Causes.joined(
              report, file.add(Causes.mark(signal, cause, verdict, who, why, Signed.now())));
      PrintWriter screen = spec.commandLine().getOut();
      screen.print(new CausesText(plant.zone()).signal(marked, signal));
      screen.println("written to " + file.path());
      screen.flush();
      return Main.DONE;
    }

    private Signal signal(AuditReport report) {
      List<Signal> all = report.signals();
      return all.stream()
          .filter(one -> one.id().equalsIgnoreCase(id.strip()))
          .findFirst()
          .orElseThrow(
              () ->
                  new ParameterException(
                      spec.commandLine(),
                      "--signal: there is no signal "
                          + id
                          + " in this audit, "
                          + (all.isEmpty()
                              ? "nor any other"
                              : "which has S1 to " + all.get(all.size() - 1).id())
                          + "; evenpour causes signals with the same arguments lists them"));
    }

    private Cause cause(AuditReport report, Signal signal) {
      String words = which.words;
      if (words != null) {
        return new Cause(Kind.OTHER, Signed.said(spec, "--other", words));
      }
      String event = which.event;
      boolean isEvent = event != null;
      String option = isEvent ? "--event" : "--setting";
      String name = Signed.said(spec, option, String.valueOf(isEvent ? event : which.setting));
      Set<String> known = new LinkedHashSet<>();
      for (Link link : signal.links()) {
        if (link.event() == isEvent) {
          known.add(link.name());
        }
      }
      if (isEvent) {
        report.events().forEach(one -> known.add(one.kind()));
      } else {
        report.settings().stream()
            .filter(one -> one.wheel().equals(signal.wheel()))
            .forEach(one -> known.add(one.name()));
      }
      if (!known.contains(name)) {
        throw new ParameterException(
            spec.commandLine(),
            option
                + ": '"
                + name
                + "' is no "
                + (isEvent ? "event" : "setting")
                + " of this log"
                + (known.isEmpty() ? ", which has none" : "; use " + String.join(", ", known))
                + "; --other marks a cause that no record shows");
      }
      return new Cause(isEvent ? Kind.EVENT : Kind.SETTING, name);
    }
  }

  /** {@code evenpour causes list}. */
  @Command(
      name = "list",
      description = {
        "Lists everything that was marked, in the order in which it was said, and checks that nothing",
        "was tampered with; with --log the notes of the board as well."
      },
      mixinStandardHelpOptions = true)
  static final class Show implements Callable<Integer> {
    @Spec private CommandSpec spec = CommandSpec.create();

    @Mixin private Checked checked = new Checked();
    @Mixin private ProfileOption profile = new ProfileOption();

    @Option(
        names = "--causes",
        paramLabel = "F",
        description = "the file of marks; default: <profile>.causes.jsonl, or <log>.causes.jsonl")
    private @Nullable Path causes;

    @Option(names = "--log", paramLabel = "LOG", description = "the log beside which they stand")
    private @Nullable Path log;

    @Override
    public Integer call() throws IntakeException, IOException {
      ZoneId zone = profile.profiles().zone();
      CausesFile file = file();
      CausesFile.Contents contents = file.read();
      checked.check(file.lines());
      LogsToAudit.warn(spec, contents.warning());
      PrintWriter screen = spec.commandLine().getOut();
      screen.print(new CausesText(zone).list(contents.marks()));
      screen.print(Checked.said(file.path(), file.lines().head()));
      if (log != null) {
        SeenFile notes = SeenFile.beside(log);
        screen.print(Checked.said(notes.path(), notes.head()));
      }
      spec.commandLine().getOut().flush();
      return Main.DONE;
    }

    private CausesFile file() throws IOException {
      List<Path> logs = profile.placed(spec, "marks", "--causes", causes, log);
      PlantFiles files = new PlantFiles(logs, profile.file(), null, List.of(), null, causes);
      files.namedAreThere();
      return files.causesFile();
    }
  }
}
