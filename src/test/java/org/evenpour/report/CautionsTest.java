package org.evenpour.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import java.util.ResourceBundle;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.evenpour.audit.Audit;
import org.evenpour.audit.Sample;
import org.evenpour.casting.PlantAdvice;
import org.evenpour.findings.Advice;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.SettingReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.MoldVerdict;
import org.evenpour.findings.MoldVerdict.Reason;
import org.evenpour.findings.MoldVerdict.Verdict;
import org.evenpour.findings.SettingsWatched.Move;
import org.evenpour.words.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The words that keep people safe stand before the deed: in every text that comes with the program,
 * in every sentence of the sample and of made reports, in every language. What a deed is, and what
 * is wet, is written down here a second time, in words.
 */
class CautionsTest {
  private static final Map<String, String> DRY =
      Map.of(
          "en", "Check first that the mold is dry.",
          "es", "Compruebe primero que el molde esté seco.");
  private static final Map<String, String> WORK =
      Map.of(
          "en", "Mold work is hot and heavy: wheel stopped and locked, people back.",
          "es",
              "Trabajar en un molde es pesado y caliente: rueda detenida y bloqueada, gente lejos.");

  /** What people would do. */
  private static final Map<String, Pattern> DEED =
      Map.of(
          "en",
          any("look at", "check (?!first that the mold is dry)", "compare", "replace", "level or"),
          "es",
          any(
              "revise",
              "compare",
              "compruebe (?!primero que el molde)",
              "reemplazar",
              "nivelar o"));

  /** Where a mold may be wet, or is not what it was. */
  private static final Map<String, Pattern> WET =
      Map.of(
          "en",
          any("wash", "water", "spray", "nozzle", "mold temp", "level and cavity"),
          "es",
          any("desmoldante", "agua", "rociad", "boquilla", "temperatura del molde", "su cavidad"));

  /** Work on the mold itself. */
  private static final Map<String, Pattern> MOLD_WORK =
      Map.of(
          "en",
          any("level and cavity", "level or dress", "replace"),
          "es",
          any("nivel y (su|la) cavidad", "nivelar o", "reemplazar"));

  private static Pattern any(String... words) {
    return Pattern.compile("(" + String.join("|", words) + ")", Pattern.CASE_INSENSITIVE);
  }

  private static Words words(String language) {
    return Words.of("org.evenpour.report.words", language);
  }

  private static Sentences sentences(AuditReport report, String language) {
    return Sentences.of(report, words(language), ZoneOffset.UTC);
  }

  private static Properties shipped() throws IOException {
    Properties shipped = new Properties();
    try (var reader = Files.newBufferedReader(Path.of("shared", "advice.properties"))) {
      shipped.load(reader);
    }
    return shipped;
  }

  /** A text that asks for a deed near wash, water, spray or a mold has the caution before it. */
  private static void assertCautioned(String text, String language, String as) {
    Matcher deed = Objects.requireNonNull(DEED.get(language)).matcher(text);
    if (!deed.find()) {
      return;
    }
    String before = text.substring(0, deed.start());
    if (Objects.requireNonNull(WET.get(language)).matcher(text).find()) {
      assertThat(before).as(as + ": " + text).contains(DRY.get(language));
    }
    if (Objects.requireNonNull(MOLD_WORK.get(language)).matcher(text).find()) {
      assertThat(before).as(as + ": " + text).contains(DRY.get(language), WORK.get(language));
    }
  }

  /** Texts that name a setting which may wet a mold have the caution, and before any deed. */
  private static void assertCautionedOf(String text, String language, String as) {
    assertThat(text).as(as).contains(DRY.get(language));
    assertCautioned(text, language, as);
  }

  /**
   * Every wording of every bundle. One that is filled in with its caution is walked below, where it
   * is said; an advice is what its key says.
   */
  @ParameterizedTest
  @ValueSource(strings = {"report.words", "view.words", "view.board", "words.remarks"})
  void noWordingAsksForADeedNearAWetMoldWithoutTheCautionBefore(String bundle) {
    List<String> walked = new ArrayList<>();
    for (String language : DRY.keySet()) {
      ResourceBundle all =
          ResourceBundle.getBundle(
              "org.evenpour." + bundle,
              language.equals("en") ? Locale.ROOT : Locale.forLanguageTag(language),
              ResourceBundle.Control.getNoFallbackControl(
                  ResourceBundle.Control.FORMAT_PROPERTIES));
      for (String key : new TreeSet<>(all.keySet())) {
        // Of advice and verdicts, with what is said before them, below. Files are replaced too.
        boolean isSaidElsewhere = key.matches("(advice|verdict|step|export)\\..*");
        String text = all.getString(key);
        for (String filled : List.of("why.setting", "why.step")) {
          text =
              key.equals(filled) ? text.replaceAll("\\{[23]\\} (?=[RLC])", both(language)) : text;
        }
        if (!isSaidElsewhere) {
          walked.add(key);
          assertCautioned(text, language, bundle + " " + language + " " + key);
        }
      }
    }
    assertThat(walked).hasSizeGreaterThan(10);
  }

  private static String both(String language) {
    return DRY.get(language) + " " + WORK.get(language) + " ";
  }

  @Test
  void everyAdviceOfTheProgramIsSaidAfterItsCautionInBothLanguages() throws IOException {
    Properties shipped = shipped();
    int wet = 0;
    for (String key : shipped.stringPropertyNames()) {
      if (key.contains(".") || key.equals("caution")) {
        continue;
      }
      String advice = Advice.standard().of(key, "");
      assertCautioned(advice, "en", key);
      for (String language : DRY.keySet()) {
        Sentences said = sentences(Reports.plant(), language);
        Link link = link(key, key.equals("wash_batch"), "", advice);
        assertCautioned(said.link(link), language, key);
        assertThat(words(language).has("advice." + key) || language.equals("en")).isTrue();
        if (Advice.standard().wetsMold(key, "")) {
          wet++;
          assertThat(said.advice(link)).as(key).startsWith(DRY.get(language));
        } else {
          assertThat(said.advice(link)).as(key).doesNotContain(DRY.get(language));
        }
      }
    }
    assertThat(wet)
        .isEqualTo(2 * 8); // wash, cooling, batch, nozzle, stop; changed, leveled, dressed
  }

  @Test
  void aSettingWithoutAdviceOrGroupIsCautionedToo() {
    for (String language : DRY.keySet()) {
      Sentences said = sentences(Reports.plant(), language);
      for (String name : List.of("hose_7", "wash_volume_ml", "mold_temp_c", "spray_flow_l_min")) {
        assertThat(said.link(link(name, false, "", ""))).as(name).endsWith(DRY.get(language));
        assertCautionedOf(said.link(link(name, false, "", "look at it")), language, name);
      }
      assertThat(said.link(link("pour_rate_kg_s", false, "pour", "")))
          .doesNotContain(DRY.get(language));
    }
  }

  /**
   * A plant's file may write texts, call a mold dry and add; what the program fears stays first.
   */
  @Test
  void aPlantAddsCautionsAndTakesNoneAway() throws IOException {
    Properties shipped = shipped();
    for (String key : shipped.stringPropertyNames()) {
      if (!key.endsWith(".wets_mold") || !shipped.getProperty(key).equals("yes")) {
        continue;
      }
      String name = key.substring(0, key.length() - ".wets_mold".length());
      PlantAdvice.Entry own =
          new PlantAdvice.Entry(
              Map.of("en", "look at the wash valve"), Map.of("en", "Tell the crane"), false);
      Advice advice = new Advice(new PlantAdvice(Map.of(name, own)), Map.of(name, false));
      String work = advice.isMoldWork(name, "") ? " " + WORK.get("en") : "";
      String said = DRY.get("en") + work + " Tell the crane. Look at the wash valve.";
      assertThat(advice.of(name, "")).isEqualTo(said);
      Sentences sentences =
          new Sentences(words("en"), ZoneOffset.UTC, false, false, Map.of(), advice);
      assertThat(sentences.advice(link(name, false, "", advice.of(name, "")))).isEqualTo(said);
    }
  }

  @Test
  void everySentenceOfTheSampleAndOfMadeReportsHasItBefore() throws Exception {
    Map<String, AuditReport> reports = new LinkedHashMap<>();
    reports.put("plant", Reports.plant());
    reports.put("nasty", Reports.nasty());
    reports.put("bare", Reports.bare());
    reports.put("sample", Audit.run(Sample.read(Sample.TORDILLA)));
    for (var one : reports.entrySet()) {
      for (String language : DRY.keySet()) {
        int walked = walk(one.getValue(), language, one.getKey() + " " + language);
        assertThat(walked).as(one.getKey()).isGreaterThan(one.getKey().equals("sample") ? 100 : -1);
      }
    }
  }

  private static int walk(AuditReport report, String language, String as) {
    Sentences said = sentences(report, language);
    Advice advice = report.advice();
    int walked = 0;
    Reasoning reasoning = new Reasoning(said);
    for (Signal signal : report.signals()) {
      assertCautioned(said.signal(signal), language, as);
      for (Link link : signal.links()) {
        if (advice.wetsMold(link.name(), link.group()) && link.evidence() != Evidence.NONE) {
          assertCautionedOf(said.link(link), language, as);
        }
        if (advice.wetsMold(link.name(), link.group())) {
          assertThat(reasoning.of(signal, link)).startsWith(DRY.get(language));
        }
        walked++;
      }
    }
    NextSteps steps = new NextSteps(report, said);
    assertCautioned(steps.once(Topic.of(report)), language, as);
    for (Topic topic : Topic.of(report)) {
      assertCautioned(said.topic(topic), language, as);
      assertCautioned(said.brief(topic), language, as);
      assertCautioned(steps.of(topic), language, as);
      assertCautioned(steps.step(topic), language, as);
    }
    EffectSentences effects = new EffectSentences(said);
    for (SettingReport setting : report.settings()) {
      for (Effect effect : setting.effects()) {
        boolean isWet = advice.wetsMold(setting.name(), setting.group());
        String text = String.join(" ", effects.of(setting, effect));
        assertThat(text.startsWith(DRY.get(language))).as(text).isEqualTo(isWet);
        walked++;
      }
    }
    for (var characteristic : report.characteristics()) {
      String acting = effects.acting(characteristic, report.settings(), 9);
      boolean isWet =
          report.settings().stream()
              .filter(one -> advice.wetsMold(one.name(), one.group()))
              .anyMatch(one -> acting.contains(said.setting(one.name())));
      assertThat(acting.startsWith(DRY.get(language))).as(acting).isEqualTo(isWet);
    }
    SettingSentences moves = new SettingSentences(said);
    for (Move move : report.watched().moves()) {
      if (advice.wetsMold(move.setting(), move.group())) {
        for (String text : List.of(moves.sentence(move), moves.brief(move), moves.told(move))) {
          assertCautionedOf(text, language, as);
        }
      }
    }
    VerdictSentences verdicts = new VerdictSentences(report, said);
    for (MoldVerdict verdict : report.verdicts()) {
      walked++;
      String whole =
          verdicts.caution(verdict)
              + " "
              + verdicts.verdict(verdict)
              + ". "
              + verdicts.reason(verdict);
      assertCautioned(whole, language, as);
      Verdict its = verdict.verdict();
      if (its == Verdict.REPLACE || its == Verdict.LEVEL || verdict.reason() == Reason.STEP) {
        assertThat(whole.strip()).contains(DRY.get(language) + " " + WORK.get(language));
        assertThat(verdicts.cautionOfAll().isEmpty() && its != Verdict.WATCH).isFalse();
      }
    }
    return walked;
  }

  /** In the summary the caution is the line above the verdicts; the closing line stays. */
  @Test
  void theSummaryWarnsInTheLineBeforeTheVerdicts() throws Exception {
    String summary = Summary.text(Audit.run(Sample.read(Sample.TORDILLA)), ZoneOffset.UTC);
    assertThat(summary)
        .contains("\n" + DRY.get("en") + " " + WORK.get("en") + "\nMolds: level or dress")
        .contains("plant procedures come first");
    assertThat((DRY.get("en") + " " + WORK.get("en")).length())
        .isLessThanOrEqualTo(Summary.COLUMNS);
  }

  @Test
  void aVerdictThatSendsPeopleToASettingHasAllItsCautions() {
    PlantAdvice.Entry own = new PlantAdvice.Entry(Map.of(), Map.of("en", "Mind the hose"), null);
    Cautions cautions =
        new Cautions(words("en"), new Advice(new PlantAdvice(Map.of("wash", own)), Map.of()));
    AuditReport plant = Reports.plant();
    SettingReport wash =
        plant.settings().stream()
            .filter(one -> one.group().equals("wash"))
            .findFirst()
            .orElseThrow();
    assertThat(cautions.of(plant, wash.wheel(), wash.name()))
        .containsExactly(DRY.get("en"), "Mind the hose.");
    assertThat(cautions.of("mold_changed", "")).containsExactly(DRY.get("en"), WORK.get("en"));
    assertThat(cautions.of("scale_checked", "")).isEmpty();
  }

  /** A setting of which nothing but the caution is said: once, and in the reader's language. */
  @Test
  void aCautionAloneIsToldInOneLanguage() {
    AuditReport report = Reports.plant();
    Link link = link("aspen_ml", false, "other", Advice.standard().of("aspen_ml", "other"));
    assertThat(sentences(report, "en").advice(link)).isEqualTo(DRY.get("en"));
    assertThat(sentences(report, "es").advice(link)).isEqualTo(DRY.get("es"));
  }

  private static Link link(String name, boolean event, String group, String lookFirst) {
    return new Link(
        name,
        event,
        group,
        "",
        Evidence.STRONG,
        1.0,
        1.0,
        0.5,
        null,
        null,
        0.01,
        211,
        lookFirst,
        List.of());
  }
}
