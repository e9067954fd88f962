package org.evenpour;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Holds the borders between the rooms; the table stands in DEVELOPERS.md. */
class ArchitectureTest {

  private static final String ROOT = "org.evenpour.";

  /** Which rooms a room may import. */
  private static final Map<String, Set<String>> MAY_IMPORT =
      Map.ofEntries(
          Map.entry("words", Set.of()),
          Map.entry("column", Set.of()),
          Map.entry("casting", Set.of("words", "column")),
          Map.entry("stats", Set.of()),
          Map.entry("intake", Set.of("words", "column", "casting")),
          Map.entry("feed", Set.of("words", "casting", "intake")),
          Map.entry("control", Set.of("column", "casting", "stats")),
          Map.entry("store", Set.of("words", "casting", "stats", "control")),
          Map.entry("link", Set.of("column", "casting", "stats", "control")),
          Map.entry("findings", Set.of("words", "casting", "control")),
          Map.entry(
              "audit",
              Set.of("words", "column", "casting", "stats", "control", "link", "findings")),
          Map.entry(
              "plant",
              Set.of(
                  "words", "casting", "intake", "feed", "control", "store", "findings", "audit")),
          Map.entry(
              "live",
              Set.of(
                  "words",
                  "column",
                  "casting",
                  "intake",
                  "feed",
                  "control",
                  "findings",
                  "audit",
                  "plant")),
          Map.entry("picture", Set.of()),
          Map.entry("table", Set.of("words", "casting", "picture")),
          Map.entry("simulate", Set.of("casting")),
          Map.entry("score", Set.of("casting", "stats", "intake", "findings", "audit", "simulate")),
          Map.entry(
              "report",
              Set.of(
                  "words",
                  "column",
                  "casting",
                  "control",
                  "findings",
                  "audit",
                  "score",
                  "table",
                  "picture")),
          Map.entry(
              "view",
              Set.of(
                  "words",
                  "column",
                  "casting",
                  "intake",
                  "control",
                  "store",
                  "findings",
                  "audit",
                  "plant",
                  "live",
                  "report",
                  "table",
                  "picture")),
          Map.entry(
              "command",
              Set.of(
                  "words",
                  "casting",
                  "intake",
                  "control",
                  "store",
                  "findings",
                  "audit",
                  "plant",
                  "report",
                  "simulate",
                  "score",
                  "view")));

  /** A part of others lives in these rooms alone. */
  private static final Map<String, List<String>> LIVES_IN =
      Map.ofEntries(
          Map.entry("org.hipparchus..", List.of("stats..")),
          Map.entry("org.apache.poi..", List.of("report.workbook..")),
          Map.entry("org.openxmlformats..", List.of("report.workbook..")),
          Map.entry(
              "org.apache.commons.csv..", List.of("intake..", "simulate..", "plant..", "table..")),
          Map.entry("com.fasterxml.jackson.core..", List.of("report..", "store..")),
          Map.entry("com.fasterxml.jackson.databind..", List.of("report..", "store..")),
          Map.entry("org.yaml..", List.of("intake..")),
          Map.entry("picocli..", List.of("command..")),
          Map.entry("org.jfree..", List.of("picture..")),
          Map.entry("org.apache.batik..", List.of("picture..")),
          Map.entry("java.awt..", List.of("picture..", "view.screen..")),
          Map.entry("javax.swing..", List.of("view.screen..")),
          Map.entry("com.formdev..", List.of("view.screen..")),
          Map.entry("net.miginfocom..", List.of("view.screen..")),
          Map.entry("java.sql..", List.of("store..")),
          // POI brings it along; numerics here are Hipparchus.
          Map.entry("org.apache.commons.math3..", List.of()));

  @TestFactory
  Stream<DynamicTest> eachRoomImportsOnlyWhatItMay() {
    return MAY_IMPORT.keySet().stream()
        .map(
            room ->
                DynamicTest.dynamicTest(
                    room,
                    () -> {
                      List<String> allowed = new ArrayList<>();
                      allowed.add(ROOT + room + "..");
                      MAY_IMPORT.get(room).forEach(other -> allowed.add(ROOT + other + ".."));
                      noClasses()
                          .that()
                          .resideInAPackage(ROOT + room + "..")
                          .should()
                          .dependOnClassesThat(
                              com.tngtech.archunit.base.DescribedPredicate.<JavaClass>describe(
                                  "lie in a room that " + room + " may not import",
                                  target ->
                                      target.getPackageName().startsWith(ROOT)
                                          && allowed.stream().noneMatch(a -> within(target, a))))
                          .allowEmptyShould(true)
                          .check(ALL);
                    }));
  }

  /** A permission that nobody uses is a door that nobody watches. */
  @Test
  void everyPermissionIsUsed() {
    List<String> unused = new ArrayList<>();
    MAY_IMPORT.forEach(
        (room, others) -> {
          for (String other : others) {
            boolean isUsed =
                ALL.stream()
                    .filter(its -> within(its, ROOT + room + ".."))
                    .flatMap(its -> its.getDirectDependenciesFromSelf().stream())
                    .anyMatch(each -> within(each.getTargetClass(), ROOT + other + ".."));
            if (!isUsed) {
              unused.add(room + " → " + other);
            }
          }
        });
    assertThat(unused).isEmpty();
  }

  @TestFactory
  Stream<DynamicTest> partsOfOthersStayInTheirRoom() {
    return LIVES_IN.entrySet().stream()
        .map(
            entry ->
                DynamicTest.dynamicTest(
                    entry.getKey(),
                    () ->
                        noClasses()
                            .that()
                            .resideOutsideOfPackages(
                                entry.getValue().stream()
                                    .map(room -> ROOT + room)
                                    .toArray(String[]::new))
                            .should()
                            .dependOnClassesThat()
                            .resideInAPackage(entry.getKey())
                            .allowEmptyShould(true)
                            .check(ALL)));
  }

  private static boolean within(JavaClass target, String pattern) {
    String name = pattern.substring(0, pattern.length() - 2);
    return target.getPackageName().equals(name) || target.getPackageName().startsWith(name + ".");
  }

  private static final JavaClasses ALL =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("org.evenpour");

  private static void check(ArchRule rule) {
    rule.allowEmptyShould(true).check(ALL);
  }

  @Test
  void roomsFormNoCycle() {
    check(slices().matching("org.evenpour.(*)..").should().beFreeOfCycles());
  }

  @Test
  void everyRoomIsSwept() {
    check(
        classes()
            .that()
            .resideInAPackage("org.evenpour..")
            .should()
            .resideInAnyPackage(
                MAY_IMPORT.keySet().stream().map(r -> ROOT + r + "..").toArray(String[]::new)));
  }

  @Test
  void onlyEntryPointsReadTheSystemClock() {
    check(
        noClasses()
            .that()
            .resideOutsideOfPackages("org.evenpour.command..")
            .should()
            .callMethod(System.class, "currentTimeMillis")
            .orShould()
            .callMethod(java.time.Instant.class, "now")
            .orShould()
            .callMethod(java.time.ZonedDateTime.class, "now")
            .orShould()
            .callMethod(java.time.LocalDateTime.class, "now")
            .orShould()
            .callMethod(java.time.Clock.class, "systemUTC")
            .orShould()
            .callMethod(java.time.Clock.class, "systemDefaultZone")
            .orShould()
            .callMethod(java.time.ZoneId.class, "systemDefault"));
  }

  @Test
  void nothingIsRandomWithoutASeed() {
    check(
        noClasses()
            .should()
            .callConstructor(java.util.Random.class)
            .orShould()
            .callConstructor(java.util.SplittableRandom.class)
            .orShould()
            .callMethod(Math.class, "random")
            .orShould()
            .callMethod(java.util.concurrent.ThreadLocalRandom.class, "current"));
  }

  @Test
  void onlyCommandsPrint() {
    check(
        noClasses()
            .that()
            .resideOutsideOfPackage("org.evenpour.command..")
            .should()
            .accessField(System.class, "out")
            .orShould()
            .accessField(System.class, "err")
            .orShould()
            .callMethod(System.class, "exit", int.class));
  }

  @Test
  void statisticsAndTheEngineKnowNoScreen() {
    check(
        noClasses()
            .that()
            .resideInAnyPackage(
                "org.evenpour.stats..", "org.evenpour.control..", "org.evenpour.link..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.nio.file..", "java.net..", "javax.."));
  }
}
