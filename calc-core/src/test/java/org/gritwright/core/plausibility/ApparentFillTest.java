package org.gritwright.core.plausibility;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.numbers;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.finding.Slip;
import org.gritwright.core.finding.Term;
import org.gritwright.core.metering.Conveyor;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ApparentFillTest {
    private static final double SALT_DENSITY = Amounts.si(BulkDensity.class, SALT.looseBulkDensity());

    /** A liter per square meter of opening, and limits of its own. */
    private static final class Trickle implements ConveyorType {
        private static final FillLimits LIMITS = new FillLimits(0.05, 0.1, 0.3, 0.4);

        @Override
        public TypeId id() {
            return TypeId.of("example.org/trickle", 1);
        }

        @Override
        public int spiLevel() {
            return Spi.LEVEL;
        }

        @Override
        public List<Parameter<?>> parameters() {
            return List.of();
        }

        @Override
        public boolean meteredByGate() {
            return true;
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            return openArea -> openArea * 0.001;
        }

        @Override
        public FillLimits fillLimits() {
            return LIMITS;
        }
    }

    private static ApparentFill at(double fill, Spreader spreader, Optional<FillLimits> callers) {
        double kilogramsPerRevolution = fill * spreader.sweptCubicMetersPerRevolution(height(4)) * SALT_DENSITY;
        return ApparentFill.of(
                kilogramsPerRevolution, 0, true, CalibrationPoint.of(SALT, spreader, height(4)), callers);
    }

    private static Optional<Finding> findingAt(double fill) {
        return new ApparentFill(Metering.Kind.CONVEYOR, fill, 0, FillLimits.COMMON, List.of()).finding();
    }

    @Test
    void isEffectiveOverLooseBulkDensity() {
        assertThat(at(0.9, CHAIN, Optional.empty()).value()).isCloseTo(0.9, within(1e-15));
        assertThat(at(0.9, CHAIN, Optional.empty()).slips()).isEmpty();
    }

    @Test
    void theCallersLimitsComeFirstThenTheTypesThenTheDefault() {
        Spreader trickle = new Spreader(Conveyor.of(new Trickle(), Map.of()), CHAIN.gate(), SENSOR);
        FillLimits callers = new FillLimits(0.5, 0.6, 0.8, 0.9);

        assertThat(at(0.2, CHAIN, Optional.empty()).limits()).isEqualTo(FillLimits.COMMON);
        assertThat(at(0.2, trickle, Optional.empty()).limits()).isEqualTo(Trickle.LIMITS);
        assertThat(at(0.2, trickle, Optional.of(callers)).limits()).isEqualTo(callers);
        assertThat(at(0.2, CHAIN, Optional.of(callers)).limits()).isEqualTo(callers);
        assertThat(at(0.2, trickle, Optional.empty()).finding()).isEmpty();
        assertThat(at(0.2, trickle, Optional.of(callers)).finding()).isPresent();
    }

    @Test
    void limitsOfACalibrationAreTheCallers() {
        CatchLimits limits = CatchLimits.COMMON.withFill(new FillLimits(0.9, 0.95, 1.05, 1.1));

        assertThat(limits.fill()).contains(new FillLimits(0.9, 0.95, 1.05, 1.1));
        assertThat(limits.fewestPulses()).isEqualTo(CatchLimits.COMMON.fewestPulses());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.85, 1.15})
    void aUsualFillHasNoFinding(double fill) {
        assertThat(findingAt(fill)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.3, 0.499, 1.151, 1.3})
    void anUnusualFillThatCanBeIsAWarning(double fill) {
        Finding finding = findingAt(fill).orElseThrow();

        assertThat(finding.code()).isEqualTo(FindingCode.FILL_IMPLAUSIBLE);
        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(finding.code().doubtsData()).isFalse();
        assertThat(numbers(finding))
                .isEqualTo(Map.of(
                        "fill", Amounts.of(fill, SpreadingUnits.ONE),
                        "lowest", Amounts.of(0.5, SpreadingUnits.ONE),
                        "highest", Amounts.of(1.15, SpreadingUnits.ONE)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.299, 1.301})
    void aFillThatCanNotBeIsAnErrorThatDoubtsTheData(double fill) {
        Finding finding = findingAt(fill).orElseThrow();

        assertThat(finding.code()).isEqualTo(FindingCode.FILL_IMPOSSIBLE);
        assertThat(finding.severity()).isEqualTo(Severity.ERROR);
        assertThat(finding.code().doubtsData()).isTrue();
        assertThat(numbers(finding))
                .isEqualTo(Map.of(
                        "fill", Amounts.of(fill, SpreadingUnits.ONE),
                        "lowest", Amounts.of(0.3, SpreadingUnits.ONE),
                        "highest", Amounts.of(1.3, SpreadingUnits.ONE)));
    }

    @Test
    void aFillThatItsUncertaintyExplainsIsUsual() {
        assertThat(new ApparentFill(Metering.Kind.CONVEYOR, 1.22, 0.07, FillLimits.COMMON, List.of()).finding())
                .isEmpty();
        assertThat(new ApparentFill(Metering.Kind.CONVEYOR, 1.22, 0.06, FillLimits.COMMON, List.of()).finding())
                .isPresent();
        assertThat(new ApparentFill(Metering.Kind.CONVEYOR, 0.47, 0.07, FillLimits.COMMON, List.of()).finding())
                .isEmpty();
        assertThat(new ApparentFill(Metering.Kind.CONVEYOR, 0.47, 0.06, FillLimits.COMMON, List.of()).finding())
                .isPresent();
    }

    @Test
    void theSentenceListsTheSlips() {
        assertThat(new ApparentFill(
                                Metering.Kind.CONVEYOR,
                                0.17,
                                0,
                                FillLimits.COMMON,
                                List.of(
                                        Slip.byFactor(Term.GATE_SETTING, Slip.Mistake.TOO_LARGE, 10, inches(2)),
                                        Slip.byFactor(
                                                Term.GEAR_RATIO,
                                                Slip.Mistake.TOO_SMALL,
                                                2,
                                                Amounts.of(6, SpreadingUnits.ONE))))
                        .finding()
                        .orElseThrow()
                        .sentence())
                .isEqualTo(
                        "By the entries the conveyor is filled to 0.17 of what it can hold, outside the possible 0.3 to 1.3:"
                                + " an entry is wrong. Any one of these would make it usual: gate opening ÷ 10 (2 in); gear ratio × 2 (6).");
        assertThat(findingAt(0.4).orElseThrow().sentence())
                .isEqualTo(
                        "By the entries the conveyor is filled to 0.4 of what it can hold, outside the usual 0.5 to 1.15."
                                + " Single slips that would make it usual: none.");
    }

    @ParameterizedTest
    @CsvSource({"0", "-0.1", "NaN", "Infinity"})
    void refusesAFillThatIsNone(double fill) {
        assertRefused(
                "apparent fill must be finite and greater than 0: " + fill,
                () -> new ApparentFill(Metering.Kind.CONVEYOR, fill, 0, FillLimits.COMMON, List.of()));
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        assertNamesWhatIsMissing(new ApparentFill(Metering.Kind.CONVEYOR, 0.9, 0, FillLimits.COMMON, List.of()));
    }
}
