package org.evenpour.command;

import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program's entry point and its one place where the process ends. */
@Command(
    name = "evenpour",
    description = "Keeps the cast anodes of a copper smelter even. It advises and never controls.",
    subcommands = {
      AuditCommand.class,
      LimitsCommand.class,
      CausesCommand.class,
      ViewCommand.class,
      SimulateCommand.class,
      ScoreCommand.class
    },
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
    int status = run(System.out, System.err, arguments);
    if (status != STAYS_OPEN) {
      System.exit(status);
    }
  }

  /** Runs one command and returns its exit status. */
  static int run(OutputStream out, OutputStream err, String... arguments) {
    return new CommandLine(new Main(out))
        .setOut(new PrintWriter(out, true, StandardCharsets.UTF_8))
        .setErr(new PrintWriter(err, true, StandardCharsets.UTF_8))
        .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
        .setUsageHelpWidth(100)
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setParameterExceptionHandler(Main::explain)
        .setExecutionExceptionHandler(Failures::explain)
        .execute(arguments);
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
