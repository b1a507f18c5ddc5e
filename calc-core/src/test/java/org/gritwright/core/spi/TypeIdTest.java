package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertRefused;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TypeIdTest {
    @ParameterizedTest
    @ValueSource(strings = {"auger", "drag-chain", "example.org/reciprocating-floor", "a1.b2-c3/d4"})
    void namesArePlainOrCarryTheirOwnersDomain(String name) {
        assertThat(TypeId.of(name, 1)).hasToString(name + ", version 1");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", " ", "Auger", "drag chain", "-auger", "auger-", "a//b", "a/b/c", "a..b", "förder", "a_b"})
    void refusesOtherNames(String name) {
        assertRefused(
                "type name must be lower-case letters, digits, dots, hyphens and one slash: \"" + name + "\"",
                () -> TypeId.of(name, 1));
    }

    @Test
    void refusesAVersionBelowOne() {
        assertRefused("type version must be 1 or more: 0", () -> TypeId.of("auger", 0));
    }

    @Test
    void sortsByNameAndThenByVersion() {
        assertThat(TypeId.of("auger", 2)).isLessThan(TypeId.of("drag-chain", 1));
        assertThat(TypeId.of("auger", 2)).isLessThan(TypeId.of("auger", 10));
        assertThat(TypeId.of("auger", 2)).isEqualByComparingTo(TypeId.of("auger", 2));
    }

    /** A recursive pattern needs a stack as deep as the name has parts. */
    @Test
    void aNameOfManyPartsIsRefusedAndOverflowsNothing() {
        assertThat(TypeId.of("a-".repeat(99) + "aa", 1).name()).hasSize(200);
        assertRefused(
                "type name must be at most 200 characters: 4001 characters",
                () -> TypeId.of("a-".repeat(2000) + "a", 1));
        assertRefused(
                "type name must be at most 200 characters: 2000000 characters",
                () -> TypeId.of("a-".repeat(1_000_000), 1));
    }
}
