package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** The two small hash tables, against those of Java. */
class IndexTest {

  @Property
  void findsLabelsAsAMapDoes(@ForAll @Size(max = 300) List<String> labels) {
    LabelIndex index = new LabelIndex();
    Map<String, Integer> map = new HashMap<>();
    for (String label : labels) {
      byte[] bytes = ("<" + label + ">").getBytes(StandardCharsets.UTF_8);
      Integer known = map.putIfAbsent(new String(bytes, StandardCharsets.UTF_8), map.size());
      assertThat(index.find(bytes, 1, bytes.length - 1)).isEqualTo(known == null ? -1 : known);
      if (known == null) {
        index.put(bytes, 1, bytes.length - 1, map.size() - 1);
      }
    }
  }

  @Property
  void remembersPoursAsASetDoes(
      @ForAll @Size(max = 2000) List<@IntRange(min = -5, max = 400) Integer> turns,
      @ForAll @IntRange(min = 1, max = 1000) int molds) {
    SeenPours seen = new SeenPours();
    Set<Long> set = new HashSet<>();
    int mold = 0;
    for (int turn : turns) {
      mold = (mold * 31 + 17) % molds;
      assertThat(seen.holds(turn, mold)).isEqualTo(!set.add(turn * 1000L + mold));
      seen.add(turn, mold);
    }
  }

  @Example
  void remembersAHundredThousandTurns() {
    SeenPours seen = new SeenPours();
    for (int turn = 0; turn < 100_000; turn++) {
      assertThat(seen.holds(turn * 7, turn % 70)).isFalse();
      seen.add(turn * 7, turn % 70);
      assertThat(seen.holds(turn * 7, turn % 70)).isTrue();
    }
  }
}
