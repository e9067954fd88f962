package org.evenpour.command;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;

/** One {@code audit} of a folder with a log and what else lies there, and what is wrong with it. */
final class TriedAudit {
  /** So long may any audit of a small log take. */
  static final Duration LONGEST = Duration.ofSeconds(10);

  static final String LOG = "log.csv";
  static final String PROFILE = "profile.yaml";
  static final String EVENTS = "events.csv";
  static final String GAUGE = "gauge.csv";

  private static final Pattern JAVA =
      Pattern.compile("internal error|Exception|\\bjava\\.|\\borg\\.|\\bat [a-z]+\\.|OutOfMemory");

  private TriedAudit() {}

  /** What is wrong with an audit; empty if it did as it should. */
  static Optional<String> finding(Path folder, boolean strict) throws IOException {
    Optional<String> finding = once(folder, strict);
    // A machine that was busy with something else says nothing of the program.
    return finding.filter(it -> it.startsWith("took")).isPresent() ? once(folder, strict) : finding;
  }

  private static Optional<String> once(Path folder, boolean strict) throws IOException {
    Path json = folder.resolve("out.json");
    Path workbook = folder.resolve("out.xlsx");
    Path log = folder.resolve(LOG);
    Path aside = folder.resolve(LOG + ".set-aside.csv");
    for (Path file : List.of(json, workbook, aside)) {
      Files.deleteIfExists(file);
    }
    List<Object> typed =
        new ArrayList<>(List.of("audit", log, "--json", json, "--workbook", workbook));
    if (strict) {
      typed.add("--strict");
    }
    addWhereThere(typed, "--profile", folder.resolve(PROFILE));
    addWhereThere(typed, "--events", folder.resolve(EVENTS));
    addWhereThere(typed, "--gauge", folder.resolve(GAUGE));
    long began = System.nanoTime();
    long worked = workedNanos();
    CommandLineCall call = CommandLineCall.of(typed.toArray());
    // On a machine that is busy with something else the clock runs on while nothing is done.
    Duration took = Duration.ofNanos(Math.min(System.nanoTime() - began, workedNanos() - worked));
    if (JAVA.matcher(call.err()).find()) {
      return Optional.of(call.err());
    }
    if (took.compareTo(LONGEST) > 0) {
      return Optional.of("took " + took.toSeconds() + " s");
    }
    try (Stream<Path> files = Files.list(folder)) {
      if (files.anyMatch(file -> file.toString().endsWith(".part"))) {
        return Optional.of("a part of a file was left");
      }
    }
    if (call.status() == 2) {
      if (Files.exists(json) || Files.exists(workbook) || Files.exists(aside)) {
        return Optional.of("status 2, but an output stands there: " + call.err());
      }
      return call.err().strip().lines().count() == 1 && call.err().contains("; ")
          ? Optional.empty()
          : Optional.of("status 2 without one line that says the mend: " + call.err());
    }
    if (call.status() != 0 && call.status() != 1) {
      return Optional.of("status " + call.status());
    }
    return outputs(json, workbook, aside, strict, call.status());
  }

  /** What the processors did for this process. */
  private static long workedNanos() {
    return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
  }

  private static void addWhereThere(List<Object> typed, String option, Path file) {
    if (Files.exists(file)) {
      typed.add(option);
      typed.add(file);
    }
  }

  private static Optional<String> outputs(
      Path json, Path workbook, Path aside, boolean strict, int status) throws IOException {
    JsonNode report = new ObjectMapper().readTree(json.toFile());
    JsonNode log = report.path("log");
    long read = log.path("rows_read").asLong(-1);
    long kept = log.path("rows_kept").asLong(-1);
    long setAside = log.path("rows_set_aside").asLong(-1);
    if (read < 0 || read != kept + setAside) {
      return Optional.of("rows read %d, kept %d, set aside %d".formatted(read, kept, setAside));
    }
    long written = 0;
    if (Files.exists(aside)) {
      CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
      try (CSVParser rows =
          CSVParser.parse(aside, java.nio.charset.StandardCharsets.UTF_8, format)) {
        written = rows.stream().count();
      }
    }
    if (written != setAside) {
      return Optional.of("%d rows set aside, but %d written".formatted(setAside, written));
    }
    if (status != (strict && setAside > 0 ? 1 : 0)) {
      return Optional.of("status " + status + " with " + setAside + " rows set aside");
    }
    for (JsonNode one : report.path("characteristics")) {
      if (one.path("overall").path("count").asLong() > kept) {
        return Optional.of("more values than rows");
      }
    }
    try (ZipFile zip = new ZipFile(workbook.toFile())) {
      if (zip.getEntry("xl/workbook.xml") == null) {
        return Optional.of("the workbook is none");
      }
    }
    return Optional.empty();
  }
}
