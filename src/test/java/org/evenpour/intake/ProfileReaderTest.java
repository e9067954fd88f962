package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.Map;
import java.util.Objects;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.evenpour.casting.CharacteristicProfile;
import org.evenpour.casting.PouringPlace;
import org.evenpour.casting.SettingProfile;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelProfile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProfileReaderTest {

  private static final String WHOLE =
      """
      wheel: N2                 # applies to rows of this wheel
      molds: 26
      zone: America/Santiago
      characteristics:
        mass:      {unit: kg, lower: 378, target: 388, upper: 398, plausible: [200, 600]}
        thickness: {unit: mm, lower: 40.7, target: 43.2, upper: 45.7}
        wedge:     {unit: mm, upper: 3.0}
      settings:
        wash_volume_ml:   {group: wash}
        pour_rate_kg_s:   {group: pour}
        spray_flow_l_min: {group: cooling, lag_turns: 1}
      headings: {Peso kg: mass_kg}
      backwards_seconds: 5
      stop_minutes: 20
      false_alarms_per_shift: 0.5
      shift_hours: 12
      pouring_place: left
      turns: counterclockwise
      """;

  private static Profiles read(String text) throws IntakeException {
    return ProfileReader.read("wheel.yaml", text);
  }

  @Test
  void readsTheShareOfTheSettings() throws IntakeException {
    assertThat(read("settings_alarm_share: 0.25").forWheel("").settingsAlarmShare())
        .isEqualTo(0.25);
    assertThat(read("molds: 26").forWheel("").settingsAlarmShare()).isEqualTo(0.1);
  }

  @Test
  void readsWhetherASettingMayLeaveAMoldWet() throws IntakeException {
    WheelProfile profile =
        read("settings: {a: {wets_mold: yes}, b: {wets_mold: false}, c: {group: pour}}")
            .forWheel("");
    assertThat(profile.setting("a").wetsMold()).isTrue();
    assertThat(profile.setting("b").wetsMold()).isFalse();
    assertThat(profile.setting("c").wetsMold()).isNull();
  }

  @Test
  void readsAWholeProfile() throws IntakeException {
    WheelProfile profile = read(WHOLE).forWheel("N2");
    assertThat(profile)
        .isEqualTo(
            new WheelProfile(
                "N2",
                26,
                ZoneId.of("America/Santiago"),
                Map.of(
                    "mass",
                    new CharacteristicProfile(
                        Unit.KG, new Specification(378.0, 388.0, 398.0), 200.0, 600.0),
                    "thickness",
                    new CharacteristicProfile(
                        Unit.MM, new Specification(40.7, 43.2, 45.7), null, null),
                    "wedge",
                    new CharacteristicProfile(
                        Unit.MM, new Specification(null, null, 3.0), null, null)),
                Map.of(
                    "wash_volume_ml", new SettingProfile("wash", 0),
                    "pour_rate_kg_s", new SettingProfile("pour", 0),
                    "spray_flow_l_min", new SettingProfile("cooling", 1)),
                Map.of("Peso kg", "mass_kg"),
                5,
                20,
                0.5,
                12,
                PouringPlace.LEFT,
                false,
                WheelProfile.DEFAULT.setPointMoveCosts(),
                WheelProfile.DEFAULT.settingsAlarmShare()));
  }

  @ParameterizedTest
  @CsvSource({"''", "'\n'", "'# nothing yet'", "'---\n---\n'", "'{}'", "'\uFEFF'"})
  void needsNoKey(String text) throws IntakeException {
    assertThat(read(text.replace("\uFEFF", "")).forWheel("any")).isEqualTo(WheelProfile.DEFAULT);
  }

  @Test
  void findsTheProfileOfEachWheel() throws IntakeException {
    Profiles profiles = read("{wheel: 02, molds: 20}\n---\nmolds: 30\n---\n{wheel: no, molds: 16}");
    assertThat(profiles.forWheel("02").molds()).isEqualTo(20);
    assertThat(profiles.forWheel("no").molds()).isEqualTo(16);
    assertThat(profiles.forWheel("2").molds()).isEqualTo(30);
    assertThat(profiles.forWheel("").molds()).isEqualTo(30);
    assertThat(Profiles.NONE.forWheel("2")).isSameAs(WheelProfile.DEFAULT);
  }

  @Test
  void storesSpecificationsInTheUnitThatFiguresAreComputedIn() throws IntakeException {
    CharacteristicProfile mass =
        Objects.requireNonNull(
            read("characteristics: {mass: {unit: lb, lower: 700, plausible: [0, 1000]}}")
                .forWheel("")
                .characteristics()
                .get("mass"));
    assertThat(mass.unit().suffix()).isEqualTo("lb");
    assertThat(mass.specification().lower()).isCloseTo(317.514659, within(1e-9));
    assertThat(mass.plausibleHigh()).isCloseTo(453.59237, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "molds: 26\\nmold: 3|2:1: the key \"mold\" is not known in the profile; did you mean molds?",
        "cars: 3|1:1: the key \"cars\" is not known in the profile; the keys here are wheel, molds,",
        "characteristics:\\n  mas: {}|2:3: the key \"mas\" is not known in characteristics; did you mean mass?",
        "characteristics:\\n  mass: {unit: kg, loewr: 3}|2:20: the key \"loewr\" is not known in mass; did you mean lower?",
        "settings:\\n  flow: {lag: 1}|2:10: the key \"lag\" is not known in flow; did you mean lag_turns?",
        "molds: 26\\nmolds: 27|2:1: the key \"molds\" stands here twice; leave one out",
        "molds: many|1:8: molds is \"many\"; it must be a number",
        "molds: 2.5|1:8: molds is \"2.5\"; it must be a whole number from 1 to 1000",
        "molds: 0|1:8: molds is \"0\"; it must be a whole number from 1 to 1000",
        "molds: '26'|1:8: molds is \"26\"; it must be a number",
        "molds: [26]|1:8: molds is a list; it must be a number",
        "molds:|1:7: molds is empty; it must be a number, or leave the line out",
        "wheel: {a: 1}|1:8: wheel is a map of keys; it must be a text",
        "wheel: ''|1:8: wheel is \"\"; it must be a text",
        "zone: Amerca/Santiago|1:7: zone \"Amerca/Santiago\" is not known; did you mean America/Santiago?",
        "zone: europe/berlin|1:7: zone \"europe/berlin\" is not known; did you mean Europe/Berlin?",
        "zone: summer time at the plant|1:7: zone \"summer time at the plant\" is not known; name a place",
        "characteristics: mass|1:18: characteristics is \"mass\"; it must be key: value lines",
        "characteristics: {mass: {unit: stone}}|1:32: unit \"stone\" does not fit here; use one of kg, lb, g, t",
        "characteristics: {thickness: {unit: kg}}|1:37: unit \"kg\" does not fit here; use one of mm, cm, in",
        "characteristics: {mass: {lower: 398, upper: 378}}|1:45: lower is larger than upper; exchange or correct them",
        "characteristics: {mass: {lower: 398, target: 388}}|1:46: lower is larger than target; exchange or correct them",
        "characteristics: {mass: {target: 398, upper: 388}}|1:46: target is larger than upper; exchange or correct them",
        "characteristics: {mass: {lower: .nan}}|1:33: lower is \".nan\"; it must be a number",
        "characteristics: {mass: {lower: 1e999}}|1:33: lower is \"1e999\"; it must be a number",
        "characteristics: {mass: {target: 1e308}}|1:34: target is \"1e308\"; no figure may be beyond 1e15",
        "characteristics: {mass: {lower: 388, upper: 388.0}}|1:45: lower and upper are both \"388.0\"; leave room between them, or leave one out",
        "backwards_seconds: 1e16|1:20: backwards_seconds is \"1e16\"; no figure may be beyond 1e15",
        "characteristics: {mass: {lower: 1:30}}|1:33: lower is \"1:30\"; it must be a number",
        "characteristics: {mass: {plausible: 200}}|1:37: plausible is \"200\"; it must be a list such as [200, 600]",
        "characteristics: {mass: {plausible: [200]}}|1:37: plausible has 1 values; give the smallest and the largest, such as [200, 600]",
        "characteristics: {mass: {plausible: [600, 200]}}|1:37: the first value of plausible is not smaller",
        "settings: {flow: {lag_turns: -1}}|1:30: lag_turns is \"-1\"; it must be a whole number from 0 to 1000",
        "settings: {flow: {wets_mold: maybe}}|1:30: wets_mold is \"maybe\"; it must be yes or no",
        "settings: {flow: }|1:17: flow is empty; it must be key: value lines, or leave the line out",
        "settings: [flow]|1:11: settings is a list; it must be key: value lines",
        "backwards_seconds: -1|1:20: backwards_seconds is \"-1\"; it must be 0 or more",
        "stop_minutes: 0|1:15: stop_minutes is \"0\"; it must be more than 0",
        "false_alarms_per_shift: 0|1:25: false_alarms_per_shift is \"0\"; it must be more than 0",
        "settings_alarm_share: 1|1:23: settings_alarm_share is \"1\"; it must be 0 or more and less than 1, such as 0.1 for a tenth",
        "molds: 26\\nsettings_alarm_share: -0.1|2:23: settings_alarm_share is \"-0.1\"; it must be 0 or more",
        "shift_hours: -8|1:14: shift_hours is \"-8\"; it must be more than 0",
        "headings: {A: mold, a: cast_at}|1:24: the heading \"a\" is mapped to mold and to cast_at; leave one out",
        "headings: {A: mold}\\n---\\nwheel: 2\\nheadings: {a: cast_at}|4:15: the heading \"a\" is mapped",
        "molds: 3\\n---\\nmolds: 4|3:1: there are two profiles that name no wheel; make one of them",
        "wheel: A\\n---\\nwheel: A|3:1: there are two profiles of the wheel \"A\"; make one of them",
        "just text|1:1: the profile is \"just text\"; it must be key: value lines",
        "- a\\n- b|1:1: the profile is a list; it must be key: value lines"
      })
  void saysWhatIsWrongWhereAndHowToMendIt(String text, String message) {
    assertThatThrownBy(() -> read(text.replace("\\n", "\n")))
        .isInstanceOf(IntakeException.class)
        .message()
        .startsWith("wheel.yaml:" + message);
  }

  @Test
  void saysInWhichLineTheYamlIsBroken() {
    assertThatThrownBy(() -> read("molds: 26\nsettings:\n\tflow: {}\n"))
        .isInstanceOf(IntakeException.class)
        .hasMessageStartingWith("wheel.yaml:3:1: this is no YAML:")
        .hasMessageEndingWith("indent with blanks, never with tabs");
    assertThatThrownBy(() -> read("molds: 26\ncharacteristics: {mass: {lower: 1\nwheel: A\n"))
        .isInstanceOf(IntakeException.class)
        .hasMessageMatching("wheel\\.yaml:[34]:[0-9]+: this is no YAML:.*check the indentation.*");
    assertThatThrownBy(() -> read("molds: 26\n\u0007: 1\n")).isInstanceOf(IntakeException.class);
  }

  @Test
  void neverMakesObjectsOfTags() {
    assertThatThrownBy(() -> read("wheel: !!java.net.URL [\"http://localhost\"]"))
        .isInstanceOf(IntakeException.class)
        .hasMessageContaining("tag is not allowed");
  }

  @Test
  void refusesAFileOfThousandsOfProfilesAtOnce() {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < 20_000; i++) {
      text.append("wheel: W").append(i).append("\n---\n");
    }
    assertTimeout(
        Duration.ofSeconds(5),
        () ->
            assertThatThrownBy(() -> ProfileReader.read("wheel.yaml", text.toString()))
                .isInstanceOf(IntakeException.class)
                .hasMessageStartingWith("wheel.yaml:2001:1: there are more than 1000 profiles"));
  }

  @Test
  void readsFilesOnlyAsUtf8(@TempDir Path folder) throws IOException, IntakeException {
    Path file = folder.resolve("wheel.yaml");
    Files.writeString(file, "\uFEFFheadings: {Équipe: crew}\n");
    assertThat(ProfileReader.read(file).headings()).containsEntry("équipe", "crew");
    Files.write(file, "headings: {Équipe: crew}\n".getBytes(StandardCharsets.ISO_8859_1));
    assertThatThrownBy(() -> ProfileReader.read(file))
        .hasMessage(file + ": this is not UTF-8; save it as a text file in UTF-8");
    assertThatThrownBy(() -> ProfileReader.read(folder)).hasMessageContaining("this is a folder");
    assertThatThrownBy(() -> ProfileReader.read(folder.resolve("none")))
        .hasMessageContaining("there is no such file");
    Files.write(file, new byte[(1 << 20) + 1]);
    assertThatThrownBy(() -> ProfileReader.read(file)).hasMessageContaining("larger than 1 MiB");
  }

  @Property(tries = 3000)
  void neverFailsButWithAPlaceAndAMend(@ForAll("mutated") String text) {
    try {
      read(text);
    } catch (IntakeException e) {
      assertThat(e.getMessage()).startsWith("wheel.yaml").contains("; ").doesNotContain("\n");
    }
  }

  @Provide
  Arbitrary<String> mutated() {
    Arbitrary<String> piece =
        Arbitraries.of(
            ":", "{", "}", "[", "]", "-", "\n", "\t", " ", "&a ", "*a", "!!x ", "'", "\"", "#",
            "---\n", "~", "1e9", "é", "\u0000", "<<: *a", "? ", "|", ">", "%", "@", "- - -");
    return net.jqwik.api.Combinators.combine(
            Arbitraries.integers().between(0, WHOLE.length()),
            Arbitraries.integers().between(0, 30),
            piece.list().ofMinSize(0).ofMaxSize(4))
        .as(
            (at, dropped, pieces) ->
                WHOLE.substring(0, at)
                    + String.join("", pieces)
                    + WHOLE.substring(Math.min(WHOLE.length(), at + dropped)));
  }
}
