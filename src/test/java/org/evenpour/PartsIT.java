package org.evenpour;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.jar.JarFile;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Whose work the finished jar holds, and on what terms: each part stands in {@code
 * META-INF/licenses/parts.csv} with its licence (by its SPDX name) and the texts that must go with
 * it, and those texts go with it. What a part says of itself is read from the part: its jar on the
 * class path, and the project file that Maven keeps beside it.
 */
class PartsIT {
  private static final String LICENSES = "META-INF/licenses/";

  /** Terms that bind nobody who hands the jar on to more than keeping the texts. */
  private static final Set<String> ACCEPTED = Set.of("Apache-2.0", "BSD-3-Clause", "MIT");

  /**
   * Terms that bind to more, part by part. The charts of JFreeChart are a given of this project
   * (decision 8): its classes lie in the jar as they were published and can be replaced there.
   */
  private static final Map<String, String> ACCEPTED_COPYLEFT =
      Map.of("org.jfree:jfreechart", "LGPL-2.1-or-later");

  /** As project files name them. */
  private static final Map<String, String> NAMES =
      Map.ofEntries(
          Map.entry("apache-2.0", "Apache-2.0"),
          Map.entry("apache license, version 2.0", "Apache-2.0"),
          Map.entry("the apache license, version 2.0", "Apache-2.0"),
          Map.entry("the apache software license, version 2.0", "Apache-2.0"),
          Map.entry("mit", "MIT"),
          Map.entry("bsd", "BSD-3-Clause"),
          Map.entry("bsd license", "BSD-3-Clause"),
          Map.entry("gnu lesser general public licence", "LGPL-2.1-or-later"));

  private static final Pattern LICENSE_TEXT =
      Pattern.compile("(?i)META-INF/[^/]*(licen[sc]e|copying)[^/]*");
  private static final Pattern NOTICE_TEXT = Pattern.compile("(?i)META-INF/notice(\\.txt|\\.md)?");

  private static final Path ALL =
      Path.of(System.getProperty("evenpour.jar", "target/evenpour-all.jar"));

  /** A part of others: its jar, and the project file beside it. */
  private record Part(Path jar, Path pom) {
    /** Where it is one that Maven fetched. */
    static @Nullable Part of(Path jar) {
      Path pom = jar.resolveSibling(jar.getFileName().toString().replaceAll("\\.jar$", ".pom"));
      return Files.isRegularFile(pom) ? new Part(jar, pom) : null;
    }

    String group() throws Exception {
      Element project = project(pom);
      String own = child(project, "groupId");
      return own != null
          ? own
          : Objects.requireNonNull(
              child(Objects.requireNonNull(element(project, "parent")), "groupId"));
    }

    String name() throws Exception {
      return group() + ":" + child(project(pom), "artifactId");
    }

    /** The folder that the folders group/artifact/version lie in. */
    private Path repository() throws Exception {
      Path folder = pom.toAbsolutePath();
      for (int up = group().split("[.]").length + 3; up > 0; up--) {
        folder = Objects.requireNonNull(folder.getParent());
      }
      return folder;
    }

    /** The licence that it or, where it is silent, its parent declares. */
    String declared() throws Exception {
      Element at = project(pom);
      while (true) {
        Element licenses = element(at, "licenses");
        if (licenses != null) {
          return Objects.requireNonNull(
              child(Objects.requireNonNull(element(licenses, "license")), "name"));
        }
        Element parent = Objects.requireNonNull(element(at, "parent"), "no licence in " + pom);
        String group = Objects.requireNonNull(child(parent, "groupId"));
        String artifact = child(parent, "artifactId");
        String version = child(parent, "version");
        at =
            project(
                repository()
                    .resolve(group.replace('.', '/'))
                    .resolve(artifact + "/" + version + "/" + artifact + "-" + version + ".pom"));
      }
    }

    Map<String, String> texts(Pattern names) throws IOException {
      Map<String, String> texts = new TreeMap<>();
      try (JarFile file = new JarFile(jar.toFile())) {
        for (ZipEntry entry : file.stream().toList()) {
          if (names.matcher(entry.getName()).matches()) {
            texts.put(entry.getName(), PartsIT.text(file, entry.getName()));
          }
        }
      }
      return texts;
    }
  }

  private static Element project(Path pom) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
    factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
    try (InputStream in = Files.newInputStream(pom)) {
      return factory.newDocumentBuilder().parse(in).getDocumentElement();
    }
  }

  private static @Nullable Element element(Element of, String name) {
    for (Node at = of.getFirstChild(); at != null; at = at.getNextSibling()) {
      if (at instanceof Element element && element.getTagName().equals(name)) {
        return element;
      }
    }
    return null;
  }

  private static @Nullable String child(Element of, String name) {
    Element element = element(of, name);
    return element == null ? null : element.getTextContent().strip();
  }

  private static String text(JarFile jar, String name) throws IOException {
    ZipEntry entry = Objects.requireNonNull(jar.getEntry(name), name);
    try (InputStream in = jar.getInputStream(entry)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static Set<String> classes(Path jar) throws IOException {
    Set<String> classes = new HashSet<>();
    try (JarFile file = new JarFile(jar.toFile())) {
      file.stream()
          .map(ZipEntry::getName)
          .filter(name -> name.endsWith(".class") && !name.endsWith("module-info.class"))
          .forEach(classes::add);
    }
    return classes;
  }

  /** The parts of the class path that lie in the finished jar, by name. */
  private static Map<String, Part> shipped() throws Exception {
    Set<String> inside = classes(ALL);
    Map<String, Part> shipped = new TreeMap<>();
    try (JarFile all = new JarFile(ALL.toFile())) {
      for (String entry : System.getProperty("java.class.path").split(File.pathSeparator)) {
        Part part = entry.endsWith(".jar") ? Part.of(Path.of(entry)) : null;
        if (part == null) {
          continue;
        }
        Set<String> its = classes(part.jar());
        // a part without a class is known by the project file that it carries
        String carried = "META-INF/maven/" + part.name().replace(':', '/') + "/pom.xml";
        if (its.isEmpty()
            ? all.getEntry(carried) != null
            : its.stream().anyMatch(inside::contains)) {
          shipped.put(part.name(), part);
        }
      }
    }
    return shipped;
  }

  private static Map<String, CSVRecord> table() throws IOException {
    Map<String, CSVRecord> table = new TreeMap<>();
    try (JarFile all = new JarFile(ALL.toFile());
        CSVParser rows =
            CSVParser.parse(
                text(all, LICENSES + "parts.csv"),
                CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get())) {
      rows.forEach(row -> table.put(row.get("part"), row));
    }
    return table;
  }

  /** Words alone; the address of the Apache licence is written with either scheme. */
  private static String words(String text) {
    return String.join(" ", text.strip().split("\\s+")).replace("https://", "http://");
  }

  @Test
  void everyPartStandsInTheTableAndNoOther() throws Exception {
    assertThat(table().keySet()).containsExactlyElementsOf(shipped().keySet());
    assertThat(shipped()).hasSizeGreaterThan(30);
  }

  @Test
  void everyClassIsOursOrThatOfAPartInTheTable() throws Exception {
    Set<String> strange = new TreeSet<>(classes(ALL));
    strange.removeIf(name -> name.startsWith("org/evenpour/"));
    for (Part part : shipped().values()) {
      strange.removeAll(classes(part.jar()));
    }
    assertThat(strange).isEmpty();
  }

  @Test
  void everyLicenceIsAnAcceptedOne() throws Exception {
    for (CSVRecord row : table().values()) {
      String part = row.get("part");
      String license = row.get("license");
      assertThat(ACCEPTED.contains(license) || license.equals(ACCEPTED_COPYLEFT.get(part)))
          .as("%s under %s", part, license)
          .isTrue();
    }
  }

  @Test
  void theTableSaysWhatThePartsSayOfThemselves() throws Exception {
    Map<String, CSVRecord> table = table();
    for (Map.Entry<String, Part> part : shipped().entrySet()) {
      String declared = part.getValue().declared().toLowerCase(Locale.ROOT);
      assertThat(NAMES).as(part.getKey()).containsKey(declared);
      assertThat(Objects.requireNonNull(table.get(part.getKey())).get("license"))
          .as(part.getKey())
          .isEqualTo(NAMES.get(declared));
    }
  }

  @Test
  void everyTextOfALicenceGoesAlong() throws Exception {
    Map<String, CSVRecord> table = table();
    try (JarFile all = new JarFile(ALL.toFile())) {
      for (Map.Entry<String, Part> part : shipped().entrySet()) {
        List<String> along = new ArrayList<>();
        for (String name :
            Objects.requireNonNull(table.get(part.getKey())).get("texts").split(" ")) {
          along.add(words(text(all, LICENSES + name)));
        }
        assertThat(along).as(part.getKey()).allMatch(text -> text.length() > 500);
        part.getValue()
            .texts(LICENSE_TEXT)
            .forEach(
                (name, text) ->
                    assertThat(along).as(part.getKey() + " " + name).contains(words(text)));
      }
    }
  }

  @Test
  void everyLineOfANoticeGoesAlong() throws Exception {
    try (JarFile all = new JarFile(ALL.toFile())) {
      Set<String> along = new HashSet<>();
      text(all, "META-INF/NOTICE").lines().map(PartsIT::words).forEach(along::add);
      int notices = 0;
      for (Map.Entry<String, Part> part : shipped().entrySet()) {
        for (String notice : part.getValue().texts(NOTICE_TEXT).values()) {
          notices++;
          assertThat(along)
              .as(part.getKey())
              .containsAll(Arrays.stream(notice.split("\\R")).map(PartsIT::words).toList());
        }
      }
      assertThat(notices).isGreaterThan(20);
    }
  }

  @Test
  void theLicenceOfTheProgramStandsUnderTheUsualName() throws Exception {
    try (JarFile all = new JarFile(ALL.toFile())) {
      assertThat(text(all, "META-INF/LICENSE")).isEqualTo(Files.readString(Path.of("LICENSE")));
    }
  }
}
