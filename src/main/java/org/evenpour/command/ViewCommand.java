package org.evenpour.command;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.evenpour.intake.IntakeException;
import org.evenpour.plant.PlantFiles;
import org.evenpour.view.model.Language;
import org.evenpour.view.screen.Viewer;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code evenpour view}: the window. */
@Command(
    name = "view",
    description = {
      "Opens the window: the desk for whole logs, and the board for a log that still grows.",
      "Evenpour advises and never controls; plant procedures come first."
    },
    mixinStandardHelpOptions = true)
final class ViewCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(paramLabel = "LOG", arity = "0..*", description = "casting logs for the desk")
  private List<Path> logs = new ArrayList<>();

  @Mixin private PlantOptions options = new PlantOptions();

  @Option(
      names = "--gauge",
      paramLabel = "F",
      description = "a gauge study or check weighings; may be given several times")
  private List<Path> gauges = new ArrayList<>();

  @Option(
      names = "--follow",
      paramLabel = "LOG",
      description = "follow a log that still grows, on the board; it need not be there yet")
  private @Nullable Path follow;

  @Mixin private LanguageOption language = new LanguageOption();

  @Option(names = "--dark", description = "begin dark")
  private boolean dark;

  @Override
  public Integer call() throws IntakeException, IOException {
    String tongue = tongue();
    PlantFiles files = options.with(logs, gauges);
    files.namedAreThere();
    if (!Viewer.hasDisplay()) {
      throw new IOException("there is no display to open a window on; audit works without one");
    }
    if (follow == null) {
      Viewer.open(files, tongue, dark, Clock.systemUTC());
    } else if (logs.isEmpty()) {
      Viewer.follow(follow, files, tongue, dark, Clock.systemUTC());
    } else {
      throw new ParameterException(
          spec.commandLine(), "--follow shows its own log on the desk; leave the other logs out");
    }
    return Main.STAYS_OPEN;
  }

  private String tongue() {
    Language asked = language.asked(spec);
    return (asked == null ? LanguageOption.ofSystem() : asked).tag();
  }
}
