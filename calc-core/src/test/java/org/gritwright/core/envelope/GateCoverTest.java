package org.gritwright.core.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.height;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.gritwright.core.envelope.GateCover.Need;
import org.gritwright.core.spi.Setting;
import org.junit.jupiter.api.Test;

class GateCoverTest {
    private static final List<Setting> SIX =
            IntStream.rangeClosed(1, 6).mapToObj(i -> height(i)).toList();

    private static Need need(String name, int first, int last) {
        return new Need(name, new HashSet<>(SIX.subList(first - 1, last)));
    }

    @Test
    void aSettingThatServesAllIsEnough() {
        GateCover cover = GateCover.smallest(SIX, List.of(need("a", 1, 4), need("b", 3, 6), need("c", 2, 3)));

        assertThat(cover.settings()).containsExactly(height(3));
        assertThat(cover.unserved()).isEmpty();
    }

    @Test
    void needsThatShareNoSettingNeedOneEach() {
        GateCover cover = GateCover.smallest(SIX, List.of(need("a", 5, 6), need("b", 1, 2), need("c", 2, 4)));

        assertThat(cover.settings()).containsExactly(height(2), height(6));
    }

    @Test
    void whatNoSettingServesIsNamed() {
        Need never = new Need("never", Set.of());
        GateCover cover = GateCover.smallest(SIX, List.of(never, need("a", 1, 1)));

        assertThat(cover.unserved()).containsExactly(never);
        assertThat(cover.settings()).containsExactly(height(1));
        assertThat(GateCover.smallest(SIX, List.of()).settings()).isEmpty();
    }

    @Test
    void whatIsNoChoiceIsRefused() {
        assertRefused(
                "gate settings to choose from must be given once each: [1 in, 1 in]",
                () -> GateCover.smallest(List.of(height(1), height(1)), List.of()));
        assertRefused(
                "setting that serves a must be one of [1 in, 2 in]: 3 in",
                () -> GateCover.smallest(SIX.subList(0, 2), List.of(need("a", 3, 3))));
        assertRefused(
                "settings that serve a must be next to each other: [1 in, 3 in]",
                () -> GateCover.smallest(SIX, List.of(new Need("a", Set.of(height(1), height(3))))));
    }

    /** Against all subsets of the settings. */
    @Property
    void noSmallerSetServesAllAndTheOrderOfNeedsDoesNotMatter(
            @ForAll @Size(max = 7) List<@IntRange(min = 0, max = 35) Integer> drawn) {
        List<Need> needs = new ArrayList<>();
        for (int number : drawn) {
            int one = number / 6 + 1;
            int other = number % 6 + 1;
            needs.add(need("n" + needs.size(), Math.min(one, other), Math.max(one, other)));
        }
        List<Setting> chosen = GateCover.smallest(SIX, needs).settings();
        int fewest = IntStream.range(0, 64)
                .filter(subset -> needs.stream().allMatch(need -> isServed(need, subset)))
                .map(Integer::bitCount)
                .min()
                .orElseThrow();

        assertThat(needs).allMatch(need -> !Collections.disjoint(need.servedBy(), chosen));
        assertThat(chosen).hasSize(fewest);
        Collections.reverse(needs);
        assertThat(GateCover.smallest(SIX, needs).settings()).isEqualTo(chosen);
    }

    private static boolean isServed(Need need, int subset) {
        return IntStream.range(0, 6)
                .anyMatch(i -> (subset >> i & 1) == 1 && need.servedBy().contains(SIX.get(i)));
    }
}
