package org.evenpour.command;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.evenpour.intake.IntakeException;
import org.evenpour.plant.KeptFiles;
import org.evenpour.report.ScoreText;
import org.evenpour.report.json.JsonScore;
import org.evenpour.score.Score;
import org.evenpour.score.Scoring;
import org.evenpour.simulate.Condition;
import org.evenpour.simulate.SimulatedPlant;
import org.evenpour.simulate.Simulation;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** {@code evenpour score}: how well audits do where the truth is known. */
@Command(
    name = "score",
    description = {
      "Audits logs whose truth is known, and says how well that went: faults found, links right.",
      "Folders hold casting-log.csv and truth.csv, and events.csv, profile.yaml, effects.csv if"
          + " there are such files, as 'evenpour simulate' writes them. Without folders, wheels"
          + " are simulated."
    },
    mixinStandardHelpOptions = true)
final class ScoreCommand implements Callable<Integer> {
  private static final String STANDARD_OUTPUT = "-";

  @Spec private CommandSpec spec = CommandSpec.create();

  @ParentCommand private @Nullable Main main;

  @Parameters(paramLabel = "FOLDER", arity = "0..*", description = "folders of logs with truth.csv")
  private List<Path> folders = new ArrayList<>();

  @Option(
      names = "--seeds",
      paramLabel = "N",
      description = "how many wheels to simulate; default: 20")
  private @Nullable Integer seeds;

  @Option(names = "--first-seed", paramLabel = "S", description = "seed of the first; default: 1")
  private @Nullable Long firstSeed;

  @Option(
      names = "--plant",
      paramLabel = "PLANT",
      description = "tordilla, or made: another plant for each seed; default: tordilla")
  private @Nullable SimulatedPlant plant;

  @Option(
      names = "--size",
      paramLabel = "SIGMA",
      description = "how large the faults are; default: as the plant has them")
  private @Nullable Double size;

  @Option(
      names = "--condition",
      paramLabel = "CONDITION",
      description = {
        "ordinary: pours, scales, records and molds as plants have them; or ideal: normal pours, weights",
        "to 0.1 kg, nothing missing, molds that do not wear. Default: ordinary"
      })
  private @Nullable Condition condition;

  @Option(
      names = "--json",
      paramLabel = "F",
      description = "write the score as JSON; '-' writes it to standard output")
  private @Nullable String json;

  @Override
  public Integer call() throws IntakeException, IOException {
    String what = folders.isEmpty() ? simulated() : given();
    checkJson();
    losesNothing();
    Score score = score();
    PrintWriter screen = spec.commandLine().getOut();
    if (STANDARD_OUTPUT.equals(json)) {
      OutputStream stream = main == null ? OutputStream.nullOutputStream() : main.standardOutput();
      JsonScore.write(what, score, stream);
      return Main.DONE;
    }
    screen.print(ScoreText.text(what, score));
    if (json != null) {
      JsonScore.write(what, score, Path.of(json));
      screen.println("wrote " + json);
    }
    screen.flush();
    return Main.DONE;
  }

  private void checkJson() {
    if (json != null && !STANDARD_OUTPUT.equals(json)) {
      try {
        Arguments.path(json);
      } catch (TypeConversionException e) {
        throw new ParameterException(spec.commandLine(), "--json: " + e.getMessage(), e);
      }
    }
  }

  private void losesNothing() throws IOException {
    KeptFiles kept = new KeptFiles();
    for (Path folder : folders) {
      for (String name : Simulation.FILES) {
        kept.reads(folder.resolve(name), "kept.truth");
      }
    }
    if (json != null && !STANDARD_OUTPUT.equals(json)) {
      kept.writes(Path.of(json), "--json");
    }
  }

  private Score score() throws IntakeException, IOException {
    try (ProgressLine progress = ProgressLine.onTerminal(spec.commandLine().getErr())) {
      if (!folders.isEmpty()) {
        if (seeds != null
            || firstSeed != null
            || plant != null
            || size != null
            || condition != null) {
          throw new ParameterException(
              spec.commandLine(),
              "give folders, or --seeds, --first-seed, --plant, --size and --condition; not both");
        }
        return Scoring.ofFolders(folders, progress::scored);
      }
      return Scoring.ofSeeds(
          chosen(), first(), count(), sizeAsked(), chosenCondition(), progress::scored);
    }
  }

  private SimulatedPlant chosen() {
    return plant == null ? SimulatedPlant.TORDILLA : plant;
  }

  private Condition chosenCondition() {
    return condition == null ? Condition.ORDINARY : condition;
  }

  private long first() {
    return firstSeed == null ? 1 : firstSeed;
  }

  private @Nullable Double sizeAsked() {
    if (size != null && !(size > 0 && size <= 10)) {
      throw new ParameterException(
          spec.commandLine(), "--size must be above 0 and up to 10 sigmas, not " + size);
    }
    return size;
  }

  private int count() {
    if (seeds != null && seeds < 1) {
      throw new ParameterException(spec.commandLine(), "--seeds must be 1 or more, not " + seeds);
    }
    return seeds == null ? 20 : seeds;
  }

  private String given() {
    return folders.size() > 2
        ? folders.get(0) + " and " + (folders.size() - 1) + " more"
        : String.join(", ", folders.stream().map(Path::toString).toList());
  }

  private String simulated() {
    return "seeds "
        + first()
        + " to "
        + (first() + count() - 1)
        + " of the plant "
        + chosen().name().toLowerCase(Locale.ROOT)
        + (condition == null ? "" : ", " + condition.name().toLowerCase(Locale.ROOT))
        + (size == null ? "" : ", faults of " + size + " sigma");
  }
}
