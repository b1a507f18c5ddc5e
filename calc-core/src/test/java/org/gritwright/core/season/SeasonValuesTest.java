package org.gritwright.core.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a season is made of, one by one. */
class SeasonValuesTest {
    private static final CommonError SCALE = new CommonError("scale", percent(0.8));

    private static Quantity<Dimensionless> percent(double value) {
        return Amounts.of(value, SpreadingUnits.PERCENT);
    }

    private static Quantity<Mass> tons(double value) {
        return Amounts.of(value, SpreadingUnits.SHORT_TON);
    }

    private static StatedMass stated(double tons, double uncertainty) {
        return StatedMass.of(tons(tons), tons(uncertainty));
    }

    private static Measured<Mass> mass(double tons) {
        return Measured.of(tons(tons), tons(1), Double.POSITIVE_INFINITY);
    }

    private static Measured<Dimensionless> error(double percent) {
        return Measured.of(percent(percent), percent(1), Double.POSITIVE_INFINITY);
    }

    private static Measured<Dimensionless> factor(double factor, double uncertainty) {
        return Measured.of(
                Amounts.of(factor, SpreadingUnits.ONE),
                Amounts.of(uncertainty, SpreadingUnits.ONE),
                Double.POSITIVE_INFINITY);
    }

    @Test
    @SuppressWarnings("NullAway") // what a caller without it may do
    void whatIsNotGivenIsNamed() {
        assertThatThrownBy(() -> new Draw("north", 1, null))
                .isInstanceOf(NullPointerException.class)
                .hasMessage("indicated");
        assertThatThrownBy(() -> new Delivery("T1", 1, null)).hasMessage("mass");
        assertThatThrownBy(() -> new OtherUse("brine", 1, null)).hasMessage("mass");
        assertThatThrownBy(() -> new CommonError("scale", null)).hasMessage("standardUncertainty");
        assertThatThrownBy(() -> new WeighedLoads(stated(1, 1), null)).hasMessage("indicated");
        assertThatThrownBy(() -> new StatedMass(tons(1), null, Optional.empty()))
                .hasMessage("standardUncertainty");
    }

    @Test
    void aMassThatSharesAnErrorHasOneOfItsOwnUnlessItIsNothing() {
        assertThat(stated(20, 0).uncertainty()).isZero();
        assertThat(stated(0, 0).sharing(SCALE).common()).contains(SCALE);
        assertThatThrownBy(() -> stated(20, 0).sharing(SCALE))
                .hasMessageContaining("standard uncertainty of a mass that shares an error");
        assertThatThrownBy(() -> stated(20, -1)).hasMessageContaining("standard uncertainty of a mass");
    }

    @Test
    void itsWholeUncertaintyIsTheRootOfBothSquares() {
        // 3 tons, and 0.8 % of 500.
        StatedMass mass = stated(500, 3).sharing(SCALE);

        assertThat(mass.wholeUncertainty()).isCloseTo(Amounts.si(Mass.class, tons(5)), within(1e-9));
        assertThat(stated(500, 3).wholeUncertainty()).isCloseTo(Amounts.si(Mass.class, tons(3)), within(1e-9));
    }

    @Test
    void periodsAreCountedFromOneToTheLastSurvey() {
        assertThatThrownBy(() -> new Draw("north", 0, tons(1)))
                .hasMessageContaining("period of a draw from pile north");
        assertThatThrownBy(() -> new Delivery("T1", 0, stated(1, 1))).hasMessageContaining("period of ticket T1");
        assertThatThrownBy(() -> new OtherUse("brine", 0, stated(1, 1))).hasMessageContaining("period of brine");
        assertThat(new OtherUse("brine", 1, stated(1, 1)).period()).isEqualTo(1);
        assertThatThrownBy(() -> Pile.of(
                        "north", "salt", stated(1, 1), List.of(new Delivery("T1", 2, stated(1, 1))), stated(1, 1)))
                .hasMessageContaining("period of ticket T1 at pile north must be at most 1");
    }

    @Test
    void whatMayBeUnexplainedIsMoreThanNothing() {
        Pile pile = Pile.of("north", "salt", stated(1, 1), List.of(), stated(1, 1));

        assertThatThrownBy(() -> pile.losing(tons(0))).hasMessageContaining("unexplained of pile north");
    }

    @Test
    void aVerificationWithoutUncertaintyIsRefused() {
        Measured<Dimensionless> exact = Measured.of(percent(1), percent(0), Double.POSITIVE_INFINITY);

        assertThatThrownBy(() -> TruckSeason.verified("1", exact, List.of(), List.of()))
                .hasMessageContaining("standard uncertainty of the calibration error of truck 1");
    }

    @Test
    void aDensityHasOneUncertaintyWhereverItIsNamed() {
        StatedMass one = stated(10, 1).sharing(SCALE);
        StatedMass other = stated(10, 1).sharing(new CommonError("scale", percent(1)));
        StatedMass plain = stated(10, 1);
        Pile opening = Pile.of("a", "salt", one, List.of(), plain);
        for (Pile pile : List.of(
                Pile.of("b", "salt", other, List.of(), plain),
                Pile.of("b", "salt", plain, List.of(), other),
                Pile.of("b", "salt", plain, List.of(Delivery.of("T1", other)), plain),
                Pile.of("b", "salt", plain, List.of(), plain).using(new OtherUse("brine", 1, other)))) {
            assertThatThrownBy(() -> new Season(List.of(opening, pile), List.of()))
                    .hasMessageContaining("standard uncertainty of scale must be the same wherever it is named");
        }
    }

    @Test
    void anErrorFollowsFromAFactorAboveZero() {
        TruckFactor truck = new TruckFactor("1", Optional.of(factor(0.8, 0.016)), 1, 0, 0);
        Measured<Dimensionless> error = truck.calibrationError().orElseThrow();

        // 1/0.8 − 1, ± 0.016/0.8².
        assertThat(Amounts.in(error.value(), SpreadingUnits.PERCENT)).isCloseTo(25, within(1e-12));
        assertThat(Amounts.in(error.standardUncertainty().orElseThrow(), SpreadingUnits.PERCENT))
                .isCloseTo(2.5, within(1e-12));
        assertThat(new TruckFactor("1", Optional.of(factor(0, 0.1)), 1, 0, 0).calibrationError())
                .isEmpty();
        assertThat(new TruckFactor("1", Optional.of(factor(-0.1, 0.1)), 1, 0, 0).calibrationError())
                .isEmpty();
    }

    @Test
    void errorsAreSaidOnTheirSide() {
        assertThat(new Suspicion.LoadsOff("1", Optional.of("scale 2"), mass(5), 3).sentence())
                .isEqualTo("The weighed loads of truck 1 on scale 2 are 5.0 ± 2.0 ton (95 %) too large.");
        assertThat(new Suspicion.LoadsOff("1", Optional.empty(), mass(-5), 3).sentence())
                .isEqualTo("The weighed loads of truck 1 are 5.0 ± 2.0 ton (95 %) too small.");
        assertThat(new Suspicion.SurveyOff("north", 1, Optional.empty(), mass(5), 3).sentence())
                .isEqualTo("Survey 1 of pile north found 5.0 ± 2.0 ton (95 %) too much.");
        assertThat(new Suspicion.SurveyOff("north", 1, Optional.empty(), mass(-5), 3).sentence())
                .isEqualTo("Survey 1 of pile north found 5.0 ± 2.0 ton (95 %) too little.");
        assertThat(new Suspicion.CommonOff("scale", error(-5), 3).sentence())
                .isEqualTo("All masses by scale are 5.0 ± 2.0 % (95 %) too small.");
        assertThat(new Suspicion.CommonOff("scale", error(0), 3).sentence())
                .isEqualTo("All masses by scale are 0.0 ± 2.0 % (95 %) too large.");
    }

    @Test
    void whatIsKnownExactlyIsSaidInWholeNumbers() {
        Measured<Mass> exact = Measured.of(tons(5), tons(0), Double.POSITIVE_INFINITY);

        assertThat(Words.plusMinus(exact)).isEqualTo("5 ± 0 ton (95 %)");
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.1, Double.NaN})
    void aScoreIsZeroOrMore(double score) {
        List<DoubleFunction<Suspicion>> kinds = List.of(
                at -> new Suspicion.TruckReports("1", error(1), Optional.empty(), at),
                at -> new Suspicion.PileOff("north", new SurveyPeriod(1, 1, List.of()), mass(1), List.of(), at),
                at -> new Suspicion.SurveyOff("north", 1, Optional.empty(), mass(1), at),
                at -> new Suspicion.LoadsOff("1", Optional.empty(), mass(1), at),
                at -> new Suspicion.CommonOff("scale", error(1), at));
        for (DoubleFunction<Suspicion> kind : kinds) {
            assertThatThrownBy(() -> kind.apply(score)).hasMessageContaining("score must be 0 or more");
            assertThat(kind.apply(0).score()).isZero();
        }
    }

    @Test
    void chancesAndCorrelationsAreWithinZeroToOne() {
        Suspicion off = new Suspicion.CommonOff("scale", error(1), 3);
        Confusion none = new Confusion(List.of(), List.of(), List.of());

        assertThat(new Confusion.Alike(off, 0).correlation()).isZero();
        assertThat(new Confusion.Alike(off, 1).correlation()).isEqualTo(1);
        assertThatThrownBy(() -> new Confusion.Alike(off, -0.1)).hasMessageContaining("correlation");
        assertThatThrownBy(() -> new Confusion.Alike(off, 1.1)).hasMessageContaining("correlation");
        assertThat(new FoundError(off, 0, none).risk()).isZero();
        assertThat(new FoundError(off, 1, none).risk()).isEqualTo(1);
        assertThatThrownBy(() -> new FoundError(off, -0.1, none)).hasMessageContaining("risk");
        assertThatThrownBy(() -> new FoundError(off, 1.1, none)).hasMessageContaining("risk");
    }
}
