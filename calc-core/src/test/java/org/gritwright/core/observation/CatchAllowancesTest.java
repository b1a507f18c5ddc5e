package org.gritwright.core.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.observation.Moisture.Basis;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CatchAllowancesTest {
    private static Quantity<Dimensionless> percent(double percent) {
        return Amounts.of(percent, PERCENT);
    }

    private static CatchAllowances of(double spillage, double transientChange) {
        return new CatchAllowances(percent(spillage), percent(transientChange), Optional.empty(), Optional.empty());
    }

    private static Moisture moisture(double content, double halfWidth, Basis basis) {
        return new Moisture(percent(content), percent(halfWidth), basis);
    }

    @Test
    void halfTheGreatestSpillageIsCorrectedForAndTheOtherHalfUncertain() {
        // Of 100 lb discharged 98 to 100 lb are caught: 99 lb ± 1 lb.
        assertThat(of(2, 0).spillageFactor()).isCloseTo(1 / 0.99, within(1e-15));
        assertThat(of(2, 0).spillageUncertainty()).isCloseTo(0.01 / Math.sqrt(3) / 0.99, within(1e-15));
    }

    @Test
    void aTransientGoesEitherWay() {
        assertThat(of(0, 1).transientUncertainty()).isCloseTo(0.01 / Math.sqrt(3), within(1e-15));
        assertThat(of(0, 1).spillageFactor()).isEqualTo(1);
    }

    @Test
    void withoutAllowancesNothingIsUncertain() {
        assertThat(CatchAllowances.NONE.spillageFactor()).isEqualTo(1);
        assertThat(CatchAllowances.NONE.spillageUncertainty()).isZero();
        assertThat(CatchAllowances.NONE.transientUncertainty()).isZero();
        assertThat(CatchAllowances.NONE.moistureUncertainty()).isZero();
    }

    @Test
    void theDryPartDependsOnWhatTheMoistureIsAPartOf() {
        assertThat(moisture(5, 1, Basis.WET_MASS).dryPart()).isCloseTo(0.95, within(1e-15));
        assertThat(moisture(5, 1, Basis.DRY_MASS).dryPart()).isCloseTo(1 / 1.05, within(1e-15));
    }

    @Test
    void theDryMassIsAsUncertainAsItsPartOfTheWetMass() {
        assertThat(moisture(5, 1, Basis.WET_MASS).relativeHalfWidth()).isCloseTo(0.01 / 0.95, within(1e-15));
        assertThat(moisture(5, 1, Basis.DRY_MASS).relativeHalfWidth())
                .isCloseTo((1 / 1.04 - 1 / 1.06) / 2 * 1.05, within(1e-15));
        assertThat(new CatchAllowances(
                                percent(0), percent(0), Optional.of(moisture(5, 1, Basis.WET_MASS)), Optional.empty())
                        .moistureUncertainty())
                .isCloseTo(0.01 / 0.95 / Math.sqrt(3), within(1e-15));
    }

    @ParameterizedTest
    @CsvSource({"20, WET_MASS, DRY_MASS, 25", "25, DRY_MASS, WET_MASS, 20", "20, WET_MASS, WET_MASS, 20"})
    void aMeasuredMoistureIsConvertedToTheBasisOfTheUncertainty(
            double measured, Basis measuredBasis, Basis basis, double content) {
        Moisture moisture = moisture(5, 1, basis).measured(percent(measured), measuredBasis);

        assertThat(moisture.content().getValue().doubleValue()).isCloseTo(content, within(1e-12));
        assertThat(moisture.halfWidth()).isEqualTo(percent(1));
        assertThat(moisture.basis()).isEqualTo(basis);
    }

    @Test
    void noMaterialIsDrierThanDry() {
        // 0 to 3 %
        assertThat(moisture(1, 2, Basis.WET_MASS).relativeHalfWidth()).isCloseTo(0.015 / 0.99, within(1e-15));
    }

    @Test
    void aWetMassIsNotWaterAlone() {
        assertRefused(
                "uncertainty of the moisture must be such that the mass can't be water alone at 60 %: 50 %",
                () -> moisture(60, 50, Basis.WET_MASS));
        assertRefused(
                "uncertainty of the moisture must be such that the mass can't be water alone at 50 %: 50 %",
                () -> moisture(50, 50, Basis.WET_MASS));
        assertThat(moisture(60, 50, Basis.DRY_MASS).dryPart()).isCloseTo(1 / 1.6, within(1e-15));
    }

    @Test
    void aRepeatabilityFromTwoCatchesHasOneDegreeOfFreedom() {
        assertThat(new Repeatability(percent(2), 1).degreesOfFreedom()).isEqualTo(1);
    }

    @Test
    void anAssumedRepeatabilityIsTakenAsExactlyKnown() {
        assertThat(Repeatability.assumed(percent(2)).relative()).isCloseTo(0.02, within(1e-15));
        assertThat(Repeatability.assumed(percent(2)).degreesOfFreedom()).isInfinite();
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1, 100})
    void refusesPartsThatAreNone(double none) {
        String rest = " must be " + (none < 0 ? "0 or more: -1 %" : "below 100 %: 100 %");
        assertRefused("greatest spillage" + rest, () -> of(none, 0));
        assertRefused("greatest transient" + rest, () -> of(0, none));
        assertRefused("moisture" + rest, () -> moisture(none, 1, Basis.WET_MASS));
        assertRefused("uncertainty of the moisture" + rest, () -> moisture(1, none, Basis.WET_MASS));
        assertRefused("repeatability" + rest, () -> Repeatability.assumed(percent(none)));
    }

    @Test
    void refusesWhatIsNoNumber() {
        assertRefused(
                "greatest spillage must be a finite ratio: NaN in \"%\"",
                () -> new CatchAllowances(
                        foreign(Double.NaN, PERCENT), percent(0), Optional.empty(), Optional.empty()));
        assertRefused(
                "degrees of freedom of the repeatability must be 1 or more: NaN",
                () -> new Repeatability(percent(2), Double.NaN));
        assertRefused(
                "degrees of freedom of the repeatability must be 1 or more: 0.0",
                () -> new Repeatability(percent(2), 0));
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        assertNamesWhatIsMissing(CatchAllowances.NONE);
        assertNamesWhatIsMissing(CatchLimits.COMMON);
        assertNamesWhatIsMissing(Conditions.NONE);
        assertNamesWhatIsMissing(moisture(5, 1, Basis.WET_MASS));
        assertNamesWhatIsMissing(SALT);
        assertNamesWhatIsMissing(AUGER_POINT);
        assertNamesWhatIsMissing(AUGER_POINT.key());
    }

    @Test
    void aMoistureAndItsBasisAreGivenTogether() {
        String rule = "moisture must be given together with its basis: ";

        assertRefused(rule + "without basis", () -> conditions(Optional.of(percent(5)), Optional.empty()));
        assertRefused(rule + "missing", () -> conditions(Optional.empty(), Optional.of(Basis.WET_MASS)));
    }

    private static Conditions conditions(Optional<Quantity<Dimensionless>> moisture, Optional<Basis> basis) {
        return new Conditions(Optional.empty(), Optional.empty(), Optional.empty(), moisture, basis, true);
    }
}
