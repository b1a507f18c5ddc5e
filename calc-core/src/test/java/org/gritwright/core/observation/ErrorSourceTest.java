package org.gritwright.core.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.Samples.SCALE;

import java.util.Arrays;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.uncertainty.ComponentKey;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ErrorSourceTest {
    /** What a program may have stored; a new source may be added. */
    @Test
    void theCodesAreStable() {
        assertThat(Arrays.stream(ErrorSource.values())
                        .map(source -> source.key().code()))
                .containsExactly(
                        "scatter",
                        "assumed-scatter",
                        "repeatability",
                        "curve",
                        "resolution",
                        "scale-rounding",
                        "count",
                        "display-step",
                        "scale-span",
                        "container-reading",
                        "container-marks",
                        "liquid-density",
                        "spillage",
                        "start-up-transient",
                        "moisture",
                        "gate-reading");
    }

    @ParameterizedTest
    @EnumSource
    void isFoundByItsKey(ErrorSource source) {
        assertThat(ErrorSource.of(source.key())).contains(source);
    }

    @Test
    void aKeyOfYourOwnIsNoneOfThem() {
        assertThat(ErrorSource.of(ComponentKey.of("temperature"))).isEmpty();
        assertThatNullPointerException().isThrownBy(() -> ErrorSource.of(null)).withMessage("key");
    }

    @Test
    void theMarksOfAContainerAreTheirsThatWasReadFrom() {
        assertThat(ErrorSource.marksOf(LiquidSamples.PAIL)).isEqualTo(ErrorSource.spanOf(LiquidSamples.read(5)));
    }

    @Test
    void aScalesSpanIsNamedWithTheScale() {
        ComponentKey key = ErrorSource.spanOf(SCALE);

        assertThat(key).isEqualTo(ComponentKey.of("scale-span", "S-1"));
        assertThat(ErrorSource.of(key)).contains(ErrorSource.SCALE_SPAN);
        assertThat(ErrorSource.SCALE_SPAN.name(key)).isEqualTo("span of scale S-1");
        assertThat(ErrorSource.SPILLAGE.name(ErrorSource.SPILLAGE.key())).isEqualTo("spillage");
    }

    @Test
    void whatEveryCatchHasAgainIsCommon() {
        assertThat(Arrays.stream(ErrorSource.values()).filter(ErrorSource::isCommonToCatches))
                .containsExactly(
                        ErrorSource.SCALE_SPAN,
                        ErrorSource.CONTAINER_MARKS,
                        ErrorSource.LIQUID_DENSITY,
                        ErrorSource.SPILLAGE,
                        ErrorSource.TRANSIENT,
                        ErrorSource.MOISTURE);
    }
}
