package org.evenpour.command;

import java.io.BufferedWriter;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program's entry point and its one place where the process ends. */
@Command(
    name = "evenpour",
    description = "Keeps the cast anodes of a copper smelter even. It advises and never controls.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    exitCodeOnInvalidInput = Main.NOT_DONE,
    exitCodeOnExecutionException = Main.NOT_DONE)
public final class Main implements Runnable {
  /** Done. */
  static final int DONE = 0;

  /** Done, but rows were set aside and {@code --strict} was given. */
  static final int DONE_WITH_ROWS_SET_ASIDE = 1;

  /** Not done. */
  static final int NOT_DONE = 2;

  /** A window is open; the process ends when it is closed. */
  static final int STAYS_OPEN = -1;

  /** By name, in the order in which help lists them. */
  private static final Map<String, Class<?>> COMMANDS = new LinkedHashMap<>();

  static {
    COMMANDS.put("audit", AuditCommand.class);
    COMMANDS.put("limits", LimitsCommand.class);
    COMMANDS.put("causes", CausesCommand.class);
    COMMANDS.put("view", ViewCommand.class);
    COMMANDS.put("simulate", SimulateCommand.class);
    COMMANDS.put("score", ScoreCommand.class);
  }

  @Spec private CommandSpec spec = CommandSpec.create();

  private final OutputStream standardOutput;

  private Main(OutputStream standardOutput) {
    this.standardOutput = standardOutput;
  }

  /** Where bytes go that are no text for people. */
  OutputStream standardOutput() {
    return standardOutput;
  }

  /**
   * Runs one command and ends the process with its status, or leaves it to the window that it
   * opened.
   *
   * @param arguments as typed
   */
  public static void main(String[] arguments) {
    int status = run(ToldOutput.ofProcess(), new FileOutputStream(FileDescriptor.err), arguments);
    if (status != STAYS_OPEN) {
      System.exit(status);
    }
  }

  /** Runs one command and returns its exit status. */
  static int run(OutputStream out, OutputStream err, String... arguments) {
    return run(new ToldOutput(out), err, arguments);
  }

  private static int run(ToldOutput told, OutputStream err, String... arguments) {
    PrintWriter screen = forPeople(told);
    PrintWriter errors = forPeople(err);
    int status;
    try {
      status = commandLine(told, screen, errors, arguments).execute(arguments);
    } catch (OutOfMemoryError | StackOverflowError e) {
      status = Failures.explain(e, errors);
    }
    screen.flush();
    String notWhole = told.failure();
    if (notWhole == null) {
      return status;
    }
    if (status != NOT_DONE && !told.isNotWanted()) {
      errors.println("evenpour: " + notWhole);
    }
    return NOT_DONE;
  }

  private static PrintWriter forPeople(OutputStream out) {
    Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
    return new PrintWriter(new BufferedWriter(new PlainWriter(text)), true);
  }

  private static CommandLine commandLine(
      ToldOutput told, PrintWriter screen, PrintWriter errors, String... arguments) {
    CommandLine line = new CommandLine(new Main(told));
    // Each command's options are read from its class, which takes as long as a short audit's
    // reading: where one is named, only its own.
    Class<?> named = arguments.length == 0 ? null : COMMANDS.get(arguments[0]);
    if (named == null) {
      COMMANDS.forEach(line::addSubcommand);
    } else {
      line.addSubcommand(arguments[0], named);
    }
    line.setOut(screen)
        .setErr(errors)
        .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
        .setUsageHelpWidth(100)
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setExpandAtFiles(false) // a log's name may begin with @
        .registerConverter(Path.class, Arguments::path)
        .registerConverter(Double.class, Arguments::number)
        .registerConverter(double.class, Arguments::number)
        .setParameterExceptionHandler(Main::explain)
        .setExecutionExceptionHandler(
            (failure, command, parsed) ->
                told.isNotWanted() ? NOT_DONE : Failures.explain(failure, command.getErr()));
    line.getSubcommands().values().forEach(Main::withoutVersion);
    return line;
  }

  /**
   * The program has a version, and its commands have not: else {@code limits retire --version 1}
   * would say the program's, and retire nothing.
   */
  private static void withoutVersion(CommandLine command) {
    OptionSpec its = command.getCommandSpec().findOption("--version");
    if (its != null && its.versionHelp()) {
      command.getCommandSpec().remove(its);
    }
    command.getSubcommands().values().forEach(Main::withoutVersion);
  }

  private static int explain(ParameterException wrong, String[] arguments) {
    PrintWriter err = wrong.getCommandLine().getErr();
    String command = wrong.getCommandLine().getCommandSpec().qualifiedName();
    String message =
        String.valueOf(wrong.getMessage())
            .lines()
            .findFirst()
            .orElse("")
            .replaceFirst("^Error: ", "");
    err.println("evenpour: " + message + "; see " + command + " --help");
    return NOT_DONE;
  }

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), "name a command: audit, limits, causes, view, simulate or score");
  }
}
