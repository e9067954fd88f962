package org.evenpour.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.evenpour.casting.Scope;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlantedShiftTest {
  private static final String HEAD =
      "fault,scope,mold,side,characteristic,first_turn,last_turn,direction\n";

  @TempDir Path folder;

  private Path file(String text) throws IOException {
    return Files.writeString(folder.resolve("truth.csv"), text, StandardCharsets.UTF_8);
  }

  @Test
  void readsTheSamplesTruth() throws IOException {
    List<PlantedShift> truth = PlantedShift.read(Path.of("samples", "tordilla-week", "truth.csv"));
    assertThat(truth).hasSize(32);
    PlantedShift starved = truth.get(2);
    assertThat(starved.fault()).isEqualTo("starved-spray");
    assertThat(starved.scope()).isEqualTo(Scope.MOLD);
    assertThat(starved.mold()).isEqualTo("13");
    assertThat(starved.firstTurn()).isEqualTo(186);
    assertThat(starved.cause()).isEqualTo("spray_flow_l_min");
    assertThat(starved.carriedBy()).isEqualTo("mold_temp_c");
    assertThat(starved.sizeSigma()).isNull();
  }

  @Test
  void readsBackWhatAMadePlantWrites() throws IOException {
    MadeSimulation.write(folder, 5, null, Condition.IDEAL);
    MadeSimulation made = MadeSimulation.of(5, null, Condition.IDEAL);
    List<PlantedShift> truth = PlantedShift.read(folder.resolve("truth.csv"));
    List<MadeTruth> planted = MadeTruth.of(made.wheel(), made.faults());
    assertThat(truth).hasSameSizeAs(planted).isNotEmpty();
    for (int i = 0; i < truth.size(); i++) {
      assertThat(truth.get(i).firstTurn())
          .isEqualTo(made.wheel().plant().firstTurn() + planted.get(i).firstTurn());
      assertThat(truth.get(i).sizeSigma()).isNotNull().isGreaterThan(0);
    }
    List<TrueEffect> effects = TrueEffect.read(folder.resolve("effects.csv"));
    assertThat(effects).hasSize(2 * made.wheel().plant().settings().size());
  }

  @Test
  void needsNoMoreThanWhatMustBeKnown() throws IOException {
    List<PlantedShift> truth =
        PlantedShift.read(
            file(
                String.join(
                    "\r\n",
                    "\uFEFFdirection;Fault;characteristic;first_turn;last_turn;mold;anything",
                    "low;dip;mass;3;9;M4;x",
                    "",
                    "high;all;mass;3;9;;",
                    "high;nothing;;;;;",
                    "")));
    assertThat(truth).hasSize(2);
    assertThat(truth.get(0).mold()).isEqualTo("M4");
    assertThat(truth.get(0).scope()).isEqualTo(Scope.MOLD);
    assertThat(truth.get(0).cause()).isEmpty();
    assertThat(truth.get(1).scope()).isEqualTo(Scope.WHEEL);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "dip,mold,4,,mass,x,9,low|first_turn \"x\" is no whole number",
        "dip,mold,4,,mass,12,9,low|last_turn 9 is before first_turn 12",
        "dip,mold,4,,mass,3,9,sideways|direction \"sideways\" is not known; use one of high",
        "dip,ladle,4,,mass,3,9,low|scope \"ladle\" is not known",
        "dip,mold,,,mass,3,9,low|the mold is missing",
        "dip,side,,,mass,3,9,low|the side is missing",
        "dip,mold,4,,mass,3,,low|last_turn is missing",
        "dip,mold,4,,mass,3,9|7 cells stand under 8 headings",
        "dip,\"mold,4,,mass,3,9,low|this is no line of cells",
      })
  void namesTheLineThatIsBroken(String line, String what) throws IOException {
    Path file = file(HEAD + "ok,mold,4,,mass,3,9,low\n\n" + line + "\n");
    assertThatThrownBy(() -> PlantedShift.read(file))
        .isInstanceOf(IOException.class)
        .hasMessageStartingWith(file + ":4: ")
        .hasMessageContaining(what)
        .hasMessageContaining("; ");
  }

  @Test
  void namesWhatIsMissingAsAWhole() throws IOException {
    assertThatThrownBy(() -> PlantedShift.read(folder.resolve("truth.csv")))
        .hasMessageContaining("truth.csv: there is no such file;");
    Path empty = file("\n");
    assertThatThrownBy(() -> PlantedShift.read(empty)).hasMessageContaining("this file is empty");
    Path other = file("a,b\n1,2\n");
    assertThatThrownBy(() -> PlantedShift.read(other))
        .hasMessageContaining("truth.csv:1: there is no column fault; the columns fault,");
    Path latin = Files.write(folder.resolve("latin.csv"), new byte[] {(byte) 0xE9, '\n'});
    assertThatThrownBy(() -> PlantedShift.read(latin)).hasMessageContaining("this is not UTF-8");
  }

  @Test
  void anEffectIsANumber() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("effects.csv"),
            "setting,characteristic,effect\nwash,mass,0\nwash,thickness,NaN\n");
    assertThatThrownBy(() -> TrueEffect.read(file))
        .hasMessageContaining("effects.csv:3: effect \"NaN\" is no number; ");
  }
}
