package org.gritwright.core.conformance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.gritwright.core.metering.BuiltInTypes;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Runs on a class path without Jackson only: who writes a type must not need it for the laws. */
@Tag("no-jackson")
class ConformanceWithoutJacksonTest {
    @Test
    void theLawsAreCheckedWithoutJackson() {
        assertThatExceptionOfType(ClassNotFoundException.class)
                .isThrownBy(() -> Class.forName("com.fasterxml.jackson.core.JsonFactory"));

        BuiltInTypes.registry()
                .conveyors()
                .forEach(type -> assertThat(Conformance.check(type)).isEmpty());
        BuiltInTypes.registry()
                .gates()
                .forEach(type -> assertThat(Conformance.check(type)).isEmpty());
        BuiltInTypes.registry()
                .pumps()
                .forEach(type -> assertThat(Conformance.check(type)).isEmpty());
        BuiltInTypes.registry()
                .flowMeters()
                .forEach(type -> assertThat(Conformance.check(type)).isEmpty());
        assertThat(BrokenGates.all())
                .allSatisfy(broken -> assertThat(Conformance.check(broken.type()))
                        .extracting(Violation::law)
                        .containsExactly(broken.law()));
    }
}
