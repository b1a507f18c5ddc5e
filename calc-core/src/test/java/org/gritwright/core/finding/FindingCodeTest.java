package org.gritwright.core.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

@Tag("locale")
class FindingCodeTest {
    /** Documents hold these: one that is missing or renamed breaks them. */
    private static final Set<String> IDS_IN_DOCUMENTS = Set.of(
            "tares-unequal",
            "scale-not-checked",
            "scale-check-missed",
            "caught-mass-small",
            "caught-volume-small",
            "pumped-volume-implausible",
            "pumped-volume-impossible",
            "metered-volume-implausible",
            "metered-volume-impossible",
            "prewet-total-off",
            "prewet-small-part",
            "prewet-by-other-ton",
            "liquid-density-differs",
            "flow-outside-meter",
            "speed-outside-pump",
            "same-container-blind",
            "pans-short-of-lane",
            "pattern-beyond-pans",
            "pan-stands-out",
            "few-pans",
            "pan-recovery-off",
            "nozzle-off-average",
            "nozzle-off-new",
            "nozzle-undecided",
            "nozzles-disagree",
            "boom-rate-off",
            "boom-liquid-changed",
            "boom-liquid-unclear",
            "solution-beyond-eutectic",
            "eutectic-side-undecided",
            "tank-density-differs",
            "tank-off-target",
            "fill-implausible",
            "fill-impossible",
            "too-few-pulses",
            "too-few-revolutions",
            "count-uncertain",
            "catches-scatter",
            "outlying-catch",
            "outlying-of-three",
            "single-catch",
            "uncertainty-incomplete",
            "uncertainty-assumed",
            "probable-slips",
            "fill-unlike-fleet",
            "same-scale-blind",
            "conveyor-not-primed",
            "coasting-mismatch",
            "oil-cold",
            "hopper-nearly-empty",
            "too-few-openings",
            "model-misfit",
            "curve-impossible",
            "curve-scatter",
            "opening-misfit",
            "dead-opening-found",
            "geometry-alone",
            "leak-untested",
            "leak-found",
            "speed-misfit",
            "starved-gate",
            "shortfall",
            "overrun",
            "tolerance-missed",
            "count-and-display-disagree",
            "open-loop",
            "no-tare",
            "other-value-in-force",
            "catch-of-another-day",
            "value-out-of-date",
            "calibration-disagrees",
            "correction-too-large",
            "correction-unconfirmed",
            "catches-disagree",
            "display-set-for-another-setting",
            "display-set-for-another-material",
            "catch-before-entry",
            "settings-nearly-the-same",
            "read-back-differs",
            "start-up-loss",
            "steady-flow-off",
            "catch-half-a-day-off",
            "catch-before-calibration",
            "counter-runs-backwards",
            "counts-overlap",
            "tares-differ",
            "runs-overlap",
            "ticket-entered-twice",
            "ticket-of-two-trucks",
            "rate-in-other-unit",
            "run-time-in-minutes",
            "road-run-differs",
            "road-runs-disagree",
            "course-in-other-unit",
            "road-speed-by-factor",
            "road-pulses-implausible",
            "road-speed-off",
            "road-speed-not-checked",
            "road-speed-before-change",
            "calibration-before-season",
            "calibration-before-change",
            "drive-points-few",
            "drive-threshold-open",
            "drive-reversal",
            "drive-readings-apart",
            "drive-speed-leaps",
            "drive-jerky",
            "drive-one-direction",
            "drive-not-repeated",
            "drive-oil-drift",
            "drive-not-as-at-work",
            "drive-conditions-not-said",
            "drive-range-narrower",
            "drive-range-disagrees",
            "drive-range-before-change",
            "stated-range-of-other-shaft",
            "drive-of-other-shaft",
            "drive-never-turned",
            "catch-above-range",
            "catch-below-range",
            "control-setting-disagrees",
            "control-setting-off-scale",
            "limit-explains-shortfall",
            "limit-explains-overrun",
            "limit-explains-part",
            "route-above-range",
            "route-below-range",
            "route-beyond-measured",
            "route-needs-setting",
            "route-outside-meter",
            "route-not-calibrated",
            "route-range-not-known",
            "plan-speed-outside-range",
            "plan-range-disagrees",
            "ticket-in-other-unit",
            "draw-in-other-unit",
            "loads-in-other-unit",
            "pile-overdrawn",
            "truck-without-draws",
            "loads-beyond-draws",
            "ticket-missing");

    @Test
    void idsAreStable() {
        Set<String> ids =
                Arrays.stream(FindingCode.values()).map(FindingCode::id).collect(Collectors.toSet());

        assertThat(ids).isEqualTo(IDS_IN_DOCUMENTS);
    }

    @Test
    void dataAreDoubtedByTheseAndNoOthers() {
        Set<FindingCode> doubting = Arrays.stream(FindingCode.values())
                .filter(FindingCode::doubtsData)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(FindingCode.class)));

        assertThat(doubting)
                .containsExactlyInAnyOrder(
                        FindingCode.SCALE_CHECK_MISSED,
                        FindingCode.LIQUID_DENSITY_DIFFERS,
                        FindingCode.FILL_IMPOSSIBLE,
                        FindingCode.PUMPED_VOLUME_IMPOSSIBLE,
                        FindingCode.METERED_VOLUME_IMPOSSIBLE,
                        FindingCode.CATCHES_SCATTER,
                        FindingCode.CONVEYOR_NOT_PRIMED,
                        FindingCode.COASTING_MISMATCH,
                        FindingCode.CURVE_IMPOSSIBLE,
                        FindingCode.CURVE_SCATTER,
                        FindingCode.OPENING_MISFIT,
                        FindingCode.COUNT_AND_DISPLAY_DISAGREE,
                        FindingCode.CALIBRATION_DISAGREES,
                        FindingCode.CATCHES_DISAGREE);
    }

    @ParameterizedTest
    @EnumSource
    void whatDoubtsTheDataIsAnError(FindingCode code) {
        assertThat(!code.doubtsData() || code.severity() == Severity.ERROR).isTrue();
    }

    @ParameterizedTest
    @EnumSource
    void templatesAreSentencesWithNamedPlaces(FindingCode code) {
        assertThat(code.template()).endsWith(".").doesNotContain("  ");
        assertThat(code.template().replaceAll("\\{[a-zA-Z]+}", "")).doesNotContain("{", "}");
    }

    /** Where a place and its slot are called differently, the place would be a number and the slot nowhere. */
    @ParameterizedTest
    @EnumSource
    void everyArgumentStandsInTheSentence(FindingCode code) {
        Set<String> silent = code.slots().stream()
                .map(Slot::name)
                .filter(name -> !code.template().contains("{" + name + "}"))
                .collect(Collectors.toSet());

        // Three catches are three, but a reader of documents shouldn't have to know.
        assertThat(silent).isEqualTo(code == FindingCode.OUTLYING_OF_THREE ? Set.of("catches") : Set.of());
    }

    @Test
    void everyTermIsUsedButForThoseOfAGoodRunDown() {
        Set<Term> used = Arrays.stream(FindingCode.values())
                .flatMap(code -> code.slots().stream())
                .flatMap(slot -> slot.terms().stream())
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Term.class)));

        assertThat(EnumSet.complementOf(EnumSet.copyOf(used))).containsExactly(Term.IN_BOTH, Term.IN_NEITHER);
    }
}
