package org.evenpour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * {@code scripts/evenpour} with classes kept for a quick start, beside the same jar without any: an
 * archive that fits, that is of another jar, that is damaged or cannot be made changes no byte.
 */
class StartIT {
  private static final Path ALL =
      Path.of(System.getProperty("evenpour.jar", "target/evenpour-all.jar"));

  private static final String AUDIT = "org.evenpour.audit.Audit source: ";

  private static final Path SAMPLE = Path.of("samples", "tordilla-week");

  @TempDir private static Path root;

  private static Ended plain = new Ended(-1, "", "");

  private static Path jar() {
    return root.resolve("target/evenpour-all.jar");
  }

  private static Path archive() {
    return root.resolve("target/evenpour.jsa");
  }

  private record Ended(int status, String out, String err) {}

  /** A tree that is built already, for nothing in it is newer than the jar; and its first start. */
  @BeforeAll
  static void builtTree() throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/bin/bash")), "the script is for bash");
    for (String folder : List.of("scripts", "src/main", "shared", "target")) {
      Files.createDirectories(root.resolve(folder));
    }
    Files.createFile(root.resolve("pom.xml"));
    for (String sources : List.of("pom.xml", "src/main", "shared")) {
      Files.setLastModifiedTime(root.resolve(sources), anHourAgo());
    }
    Files.copy(Path.of("scripts", "evenpour"), root.resolve("scripts/evenpour"));
    copy(SAMPLE, root.resolve(SAMPLE));
    List<String> rows = Files.readAllLines(SAMPLE.resolve("casting-log.csv"));
    Files.write(root.resolve("short.csv"), rows.subList(0, 400));
    Files.copy(ALL, jar());
    Files.setLastModifiedTime(jar(), FileTime.from(Instant.now().minusSeconds(60)));
    plain = run(List.of("java", "-Xshare:off", "-jar", jar().toString()), "");
    assertThat(plain.status()).isZero();
    assertThat(plain.out()).contains("mass");
    assertThat(script("")).isEqualTo(plain);
    assertThat(Files.size(archive())).isGreaterThan(1_000_000);
  }

  private static FileTime anHourAgo() {
    return FileTime.from(Instant.now().minusSeconds(3600));
  }

  @Test
  void takesItsClassesFromWhereTheFirstStartKeptThem() throws Exception {
    FileTime made = Files.getLastModifiedTime(archive());
    Path loaded = root.resolve("loaded");
    assertThat(script("-Xlog:class+load:file=" + loaded)).isEqualTo(plain);
    assertThat(Files.readString(loaded)).contains(AUDIT + "shared objects file");
    // Made once, and nothing left over.
    assertThat(Files.getLastModifiedTime(archive())).isEqualTo(made);
    assertThat(names(root.resolve("target")))
        .containsExactlyInAnyOrder("evenpour-all.jar", "evenpour.jsa", "evenpour.jsa.of");
  }

  /** Options under which Java lays its objects out otherwise, or is told to share nothing. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "-XX:-UseCompressedOops",
        "-XX:-UseCompressedClassPointers",
        "-XX:ObjectAlignmentInBytes=16",
        "-Xshare:off",
        "-XX:+UseG1GC"
      })
  void otherOptionsOfJavaChangeNothing(String option) throws Exception {
    assertThat(script(option)).isEqualTo(plain);
  }

  /** The worst: another jar that looks older than the archive. Java itself refuses it. */
  @Test
  void isNotTakenForAnotherJar() throws Exception {
    FileTime before = Files.getLastModifiedTime(jar());
    Path loaded = root.resolve("loaded");
    Files.setLastModifiedTime(jar(), FileTime.from(before.toInstant().minusSeconds(60)));
    try {
      assertThat(script("-Xlog:class+load:file=" + loaded)).isEqualTo(plain);
      assertThat(Files.readString(loaded)).contains(AUDIT).doesNotContain(AUDIT + "shared");
    } finally {
      Files.setLastModifiedTime(jar(), before);
    }
  }

  @Test
  void isPassedOverWhereItIsDamaged() throws Exception {
    byte[] made = Files.readAllBytes(archive());
    assertThat(archive().toFile().setWritable(true)).isTrue();
    try {
      Files.write(archive(), Arrays.copyOf(made, made.length / 2));
      assertThat(script("")).as("cut off").isEqualTo(plain);
      Files.writeString(archive(), "no archive");
      assertThat(script("")).as("a text").isEqualTo(plain);
      byte[] otherHead = made.clone();
      otherHead[8]++;
      Files.write(archive(), otherHead);
      assertThat(script("")).as("its head").isEqualTo(plain);
    } finally {
      Files.write(archive(), made);
    }
  }

  @Test
  void isMadeAnewWhereTheJarIsNewerAndNotTriedAgainWhereItCannotBeMade() throws Exception {
    byte[] made = Files.readAllBytes(archive());
    FileTime jar = Files.getLastModifiedTime(jar());
    Files.move(root.resolve(SAMPLE), root.resolve("moved"));
    try {
      Files.setLastModifiedTime(jar(), FileTime.from(Instant.now()));
      assertThat(script("")).isEqualTo(plain);
      assertThat(archive()).isEmptyFile();
      FileTime first = Files.getLastModifiedTime(archive());
      assertThat(script("")).isEqualTo(plain);
      assertThat(Files.getLastModifiedTime(archive())).isEqualTo(first);
    } finally {
      Files.setLastModifiedTime(jar(), jar);
      Files.move(root.resolve("moved"), root.resolve(SAMPLE));
      Files.write(archive(), made);
    }
  }

  private static Ended script(String options) throws Exception {
    return run(List.of("/bin/bash", "scripts/evenpour"), options);
  }

  private static Ended run(List<String> program, String options) throws Exception {
    List<String> command = new ArrayList<>(program);
    command.addAll(List.of("audit", "short.csv", "--profile", SAMPLE + "/profile.yaml"));
    if (!Files.exists(root.resolve(SAMPLE))) {
      command.set(command.size() - 1, "moved/profile.yaml");
    }
    Path out = root.resolve("out");
    Path err = root.resolve("err");
    ProcessBuilder builder = new ProcessBuilder(command).directory(root.toFile());
    String bin = Path.of(System.getProperty("java.home"), "bin").toString();
    builder.environment().merge("PATH", bin, (before, first) -> first + ":" + before);
    builder.environment().put("EVENPOUR_JAVA_OPTS", options);
    builder.environment().remove("JAVA_TOOL_OPTIONS"); // Java tells of them on standard error
    Process process = builder.redirectOutput(out.toFile()).redirectError(err.toFile()).start();
    assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
    return new Ended(process.exitValue(), Files.readString(out), Files.readString(err));
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).toList();
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      files.forEach(
          file -> {
            try {
              Path target = to.resolve(from.relativize(file).toString());
              Files.createDirectories(target.getParent());
              if (Files.isRegularFile(file)) {
                Files.copy(file, target);
              }
            } catch (IOException e) {
              throw new UncheckedIOException(e);
            }
          });
    }
  }
}
