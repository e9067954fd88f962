package org.evenpour.command;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.evenpour.audit.Audit;
import org.evenpour.casting.CastingRecord;
import org.evenpour.findings.AuditReport;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.SetAside;
import org.evenpour.plant.KeptFiles;
import org.evenpour.plant.PlantFiles;
import org.evenpour.report.FinishedFile;
import org.evenpour.report.Summary;
import org.evenpour.report.json.JsonReport;
import org.evenpour.report.workbook.AuditWorkbook;
import org.evenpour.view.model.Language;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** {@code evenpour audit}: one complete audit of one or several logs. */
@Command(
    name = "audit",
    description = {
      "Audits casting logs: limits, capability, signals, and which setting goes with each.",
      "Prints a summary of one screen; mass and thickness are judged mold by mold.",
      "Evenpour advises and never controls; plant procedures come first."
    },
    footer = {
      "",
      "Rows that cannot be used are written to LOG.set-aside.csv with line and reason; the run goes on.",
      "Exit status: 0 done; 1 done, but --strict was given and rows were set aside; 2 not done."
    },
    mixinStandardHelpOptions = true)
final class AuditCommand implements Callable<Integer> {
  private static final String STANDARD_OUTPUT = "-";

  @Spec private CommandSpec spec = CommandSpec.create();

  @ParentCommand private @Nullable Main main;

  @Mixin private LogsToAudit logs = new LogsToAudit();

  @Option(
      names = "--gauge",
      paramLabel = "F",
      description =
          "a gauge study (CSV: part,operator,mass_kg) or check weighings (at,reference_kg,mass_kg);"
              + " may be given several times")
  private List<Path> gauges = new ArrayList<>();

  @Option(
      names = "--json",
      paramLabel = "F",
      description = "write the whole report as JSON; '-' writes it to standard output")
  private @Nullable String json;

  @Option(names = "--workbook", paramLabel = "F.xlsx", description = "write the workbook")
  private @Nullable Path workbook;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "write audit.xlsx, audit.json and rows set aside into this folder")
  private @Nullable Path out;

  @Mixin private LanguageOption language = new LanguageOption();

  @Option(names = "--strict", description = "exit status 1 where rows were set aside")
  private boolean strict;

  @Override
  public Integer call() throws IntakeException, IOException {
    checkJson();
    words();
    LogsToAudit.Plant plant = logs.plant(spec, gauges);
    ZoneId zone = plant.zone();
    if (out != null) {
      Files.createDirectories(out);
    }
    try (SetAside setAside = out == null ? SetAside.besideLogs() : SetAside.into(out)) {
      losesNothing(plant.files(), setAside);
      CastingRecord record = plant.read(spec, setAside);
      AuditReport report = Audit.run(record, plant.kept().records());
      write(record, report, plant.zoneOfLog());
      List<Path> written = setAside.complete();
      if (!STANDARD_OUTPUT.equals(json)) {
        tell(report, zone, written);
      }
      return strict && record.rowsSetAside() > 0 ? Main.DONE_WITH_ROWS_SET_ASIDE : Main.DONE;
    }
  }

  private Words words() {
    Language asked = language.asked(spec);
    return asked == null ? Words.english() : asked.report();
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

  /** Refuses to write over what is read, or one output over another. */
  private void losesNothing(PlantFiles files, SetAside setAside) throws IOException {
    KeptFiles kept = files.notToBeLost();
    for (Path file : setAside.filesOf(files.logs())) {
      kept.writes(file, "rows set aside");
    }
    if (out != null) {
      kept.writes(out.resolve("audit.json"), "--out");
      kept.writes(out.resolve("audit.xlsx"), "--out");
    }
    if (json != null && !STANDARD_OUTPUT.equals(json)) {
      kept.writes(Path.of(json), "--json");
    }
    if (workbook != null) {
      kept.writes(workbook, "--workbook");
    }
  }

  private void write(CastingRecord record, AuditReport report, ZoneId zone) throws IOException {
    Map<Path, FinishedFile.Content> files = new LinkedHashMap<>();
    FinishedFile.Content asJson = stream -> JsonReport.write(report, stream);
    FinishedFile.Content asWorkbook =
        stream -> AuditWorkbook.write(report, record, stream, zone, words());
    if (out != null) {
      files.put(out.resolve("audit.json"), asJson);
      files.put(out.resolve("audit.xlsx"), asWorkbook);
    }
    if (json != null && !STANDARD_OUTPUT.equals(json)) {
      files.put(Path.of(json), asJson);
    }
    if (workbook != null) {
      files.put(workbook, asWorkbook);
    }
    FinishedFile.writeAll(files);
    if (STANDARD_OUTPUT.equals(json)) {
      OutputStream stream = main == null ? OutputStream.nullOutputStream() : main.standardOutput();
      JsonReport.write(report, stream);
      stream.flush();
    }
  }

  private void tell(AuditReport report, ZoneId zone, List<Path> setAsideFiles) {
    PrintWriter screen = spec.commandLine().getOut();
    screen.print(Summary.text(report, zone, words()));
    if (out != null) {
      screen.println("wrote " + out.resolve("audit.xlsx") + " and audit.json");
    }
    if (workbook != null) {
      screen.println("wrote " + workbook);
    }
    if (json != null) {
      screen.println("wrote " + json);
    }
    for (Path file : setAsideFiles) {
      screen.println("rows set aside: " + file);
    }
    screen.flush();
  }
}
