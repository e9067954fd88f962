package org.evenpour.view.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class FilterTextTest {
  private static boolean passes(String typed) {
    Map<String, List<String>> row = Map.of("mold", List.of("23"), "state", List.of("not stable"));
    return FilterText.of(typed)
        .passes(
            field -> row.getOrDefault(field, List.of()),
            letters -> "mold 23 not stable".contains(letters));
  }

  @Test
  void aFieldIsHeldAgainstItsOwnColumnWhole() {
    assertThat(passes("mold:23")).isTrue();
    assertThat(passes("Mold:23")).isTrue();
    assertThat(passes("mold:2")).isFalse();
    assertThat(passes("mold:3")).isFalse();
    assertThat(passes("state:stable mold:23")).isTrue();
    assertThat(passes("state:stable mold:24")).isFalse();
    assertThat(passes("crew:23")).isFalse();
  }

  @Test
  void lettersAreFoundAnywhereBesideFields() {
    assertThat(passes("")).isTrue();
    assertThat(passes("stab mold:23")).isTrue();
    assertThat(passes("else mold:23")).isFalse();
    // Still being typed; and a time is no field.
    assertThat(passes("mold:")).isTrue();
    assertThat(passes("12:30")).isFalse();
    assertThat(passes("mold:.*")).isFalse();
  }
}
