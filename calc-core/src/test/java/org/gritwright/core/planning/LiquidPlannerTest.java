package org.gritwright.core.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.LiquidSamples.METER_POINT;
import static org.gritwright.core.LiquidSamples.gallons;
import static org.gritwright.core.LiquidSamples.poundsPerGallon;
import static org.gritwright.core.LiquidSamples.pumpPoint;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.planning.LiquidSetups.METER_PULSES;
import static org.gritwright.core.planning.LiquidSetups.PER_TURN;
import static org.gritwright.core.planning.LiquidSetups.counted;
import static org.gritwright.core.planning.LiquidSetups.density;
import static org.gritwright.core.planning.LiquidSetups.graduate;
import static org.gritwright.core.planning.LiquidSetups.meter;
import static org.gritwright.core.planning.LiquidSetups.read;
import static org.gritwright.core.planning.LiquidSetups.weighed;
import static org.gritwright.core.planning.Setups.inPercent;
import static org.gritwright.core.planning.Setups.percent;
import static org.gritwright.core.planning.Setups.scatter;

import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Volume;
import org.assertj.core.data.Offset;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.VolumePerRevolution;
import org.junit.jupiter.api.Test;

/** Nobody publishes such numbers: all are derived by hand from the definitions. */
class LiquidPlannerTest {
    private static final Offset<Double> SIX_DIGITS = within(1e-6);
    private static final PlannedAmount PAIL = read(graduate(0.05, 0.03), 1, 5);

    private static CatchSeries reached(PlanResult result) {
        assertThat(result).isInstanceOf(PlanResult.Reached.class);
        return result.series();
    }

    private static PlanResult.OutOfReach outOfReach(PlanResult result) {
        assertThat(result).isInstanceOf(PlanResult.OutOfReach.class);
        return (PlanResult.OutOfReach) result;
    }

    private static Component<?> row(CatchSeries series, Cause cause) {
        return series.budget().components().stream()
                .filter(row -> row.name().equals(cause.words()))
                .findFirst()
                .orElseThrow();
    }

    /**
     * The least is 100 divisions, 5 gal, 6000 pulses. Reading 0.05 ÷ √12 ÷ 5 = 0.288675 %; count 1 ÷ √6 ÷ 6000 = 0.00680414 %;
     * marks 0.03 ÷ 5 ÷ √3 = 0.346410 %; scatter 0.5 %. √(0.25 + 0.0833333 + 0.0000463 + 0.12) % × 1.959964 = 1.319712 %.
     */
    @Test
    void oneCatchInAPailIsAddedUpRowByRow() {
        CatchSeries one =
                reached(CatchPlanner.of(meter(PAIL).allowing(scatter(0.5))).plan(percent(1.32)));

        assertThat(one.repeats()).isEqualTo(1);
        assertThat(Amounts.format(one.amountPerCatch())).isEqualTo("5 gal");
        assertThat(Amounts.format(one.totalAmount())).isEqualTo("5 gal");
        assertThat(one.pulses().map(Amounts::format)).hasValue("6000 pulse");
        assertThat(one.containersToFill()).isEqualTo(1);
        assertThat(one.budget().components())
                .extracting(Component::key)
                .containsExactly(
                        ErrorSource.REPEATABILITY.key(),
                        ErrorSource.CONTAINER_READING.key(),
                        ErrorSource.COUNT.key(),
                        ErrorSource.marksOf(graduate(0.05, 0.03)));
        assertThat(one.budget().components())
                .extracting(row -> inPercent(row.contribution()))
                .usingComparatorForType((a, b) -> Math.abs(a - b) < 1e-6 ? 0 : Double.compare(a, b), Double.class)
                .containsExactly(0.5, 0.288675, 0.006804, 0.346410);
        assertThat(inPercent(one.expandedUncertainty())).isCloseTo(1.319712, SIX_DIGITS);
    }

    /** 8 gal are two fills of at most 5 gal: reading 0.05 ÷ √12 × √2 ÷ 8, marks 2 × 0.03 ÷ 8 ÷ √3: as much as in one of 4 gal. */
    @Test
    void aSecondFillReadsOnceMoreAndItsMarksAreWrongOnceMore() {
        CatchSetup setup = meter(read(graduate(0.05, 0.03), 2, 5)).allowing(scatter(0.5));
        CatchModel model = new CatchModel(setup);

        CatchModel.Catch eight = model.at(8 * 1200);

        assertThat(eight.containers()).isEqualTo(2);
        assertThat(eight.rounding() * 100).isCloseTo(0.255155, SIX_DIGITS);
        assertThat(eight.span() * 100).isCloseTo(0.433013, SIX_DIGITS);
        assertThat(model.at(5 * 1200).containers()).isEqualTo(1);
        assertThat(Amounts.in(
                        model.series(model.at(model.most()), 1).amountPerCatch().asType(Volume.class),
                        SpreadingUnits.US_GALLON))
                .isCloseTo(10, within(1e-12));
    }

    @Test
    void whereNobodyKnowsTheMarksTwoPercentAreAssumedAndSaid() {
        Graduate unknown = Graduate.of("P-9", gallons(6), gallons(0.05));
        CatchSeries best = outOfReach(
                        CatchPlanner.of(meter(read(unknown, 1, 6))).plan(percent(1)))
                .series();

        assertThat(inPercent(row(best, Cause.MARKS).contribution().asType(Dimensionless.class)))
                .isCloseTo(2 / Math.sqrt(3), SIX_DIGITS);
        assertThat(best.assumptions())
                .contains(
                        "The marks of container P-9 are assumed to be off by at most 2 % (common practice, no source):"
                                + " their tolerance is not known.");
    }

    /** Marks 0.03 ÷ 5 ÷ √3 × 1.959964 = 0.678952 %, in every catch of every size up to 5 gal or more. */
    @Test
    void theMarksAreAFloorThatNoNumberOfCatchesGetsUnder() {
        CatchPlanner planner = CatchPlanner.of(meter(PAIL).allowing(scatter(0.5)), 1, 1000);

        PlanResult.OutOfReach below = outOfReach(planner.plan(percent(0.67)));
        assertThat(inPercent(below.floor())).isCloseTo(0.678952, SIX_DIGITS);
        assertThat(below.isBelowFloor()).isTrue();
        assertThat(below.mainCause()).isEqualTo(Cause.MARKS);
        assertThat(reached(planner.plan(percent(0.685))).repeats()).isBetween(2, 1000);

        PlanResult.OutOfReach ofFew = outOfReach(
                CatchPlanner.of(meter(PAIL).allowing(scatter(0.5)), 1, 2).plan(percent(0.685)));
        assertThat(ofFew.isBelowFloor()).isFalse();
        assertThat(ofFew.mainCause()).isEqualTo(Cause.SCATTER);
        assertThat(new PlanResult.OutOfReach(percent(0.7), ofFew.series(), Cause.MARKS, percent(0.7)).isBelowFloor())
                .isTrue();
    }

    /** Density 0.098 ÷ 9.8 = 1 %: √(1² + (0.001 ÷ √3)²) % × 1.959964 = 1.959964 %. */
    @Test
    void theDensityIsAFloorOfWhatIsWeighed() {
        PlannedAmount pails = weighed(Setups.rightScale(0.05), 1, 0.098);
        PlanResult.OutOfReach out =
                outOfReach(CatchPlanner.of(meter(pails).allowing(scatter(0.5))).plan(percent(1.9)));

        assertThat(inPercent(out.floor())).isCloseTo(1.959964, SIX_DIGITS);
        assertThat(out.isBelowFloor()).isTrue();
        assertThat(out.mainCause()).isEqualTo(Cause.DENSITY);
        assertThat(row(out.series(), Cause.DENSITY)).satisfies(density -> {
            assertThat(density.key()).isEqualTo(ErrorSource.LIQUID_DENSITY.key());
            assertThat(density.distribution()).isEqualTo(Distribution.NORMAL);
        });
    }

    /** 5 gal at 9.8 lb/gal are 49 lb and 51 lb gross; the scale rounds twice: 0.2 ÷ √12 × √2 ÷ 49 = 0.166632 %. */
    @Test
    void aPailOnAScaleIsWeighedFullAndEmpty() {
        PlannedAmount pails = weighed(Setups.scale(0.2, 0.1), 2, 0.02);
        CatchModel model = new CatchModel(meter(pails));

        CatchModel.Catch five = model.at(5 * 1200);

        assertThat(five.containers()).isEqualTo(1);
        assertThat(five.rounding() * 100).isCloseTo(0.166632, SIX_DIGITS);
        assertThat(five.span() * 100).isCloseTo(0.1 / Math.sqrt(3), SIX_DIGITS);
        assertThat(model.at(5.1 * 1200).containers()).isEqualTo(2);
    }

    /** Of the scale's 500 lb the pail itself takes 2: 498 lb ÷ 9.8 lb/gal are 50.8163 gal. */
    @Test
    void theScaleCarriesNoMoreThanItsCapacity() {
        PlannedAmount tub =
                PlannedAmount.WeighedLiquid.inPails(Setups.scale(0.2), DAY, 1, gallons(80), pounds(2), density(0.02));

        assertThat(new CatchModel(meter(tub)).most() / 1200).isCloseTo(50.816327, SIX_DIGITS);
    }

    /** 300 gal hold 360 000 pulses: hundreds are tried, and the answer comes in no time. */
    @Test
    void aTankIsSearchedInSteps() {
        Graduate tank = Graduate.of("tank", gallons(300), gallons(1)).within(gallons(0.5));

        CatchSeries series = reached(CatchPlanner.of(meter(read(tank, 1, 300)).allowing(scatter(0.2)))
                .plan(percent(0.6)));

        assertThat(series.pulses().orElseThrow().getValue().doubleValue() % 100).isZero();
    }

    @Test
    void aPumpIsPlannedInTurnsOfItsSensedShaft() {
        CatchSetup setup = CatchSetup.of(PAIL, counted(SENSOR), PER_TURN).allowing(scatter(0.5));

        CatchSeries one = reached(CatchPlanner.of(setup).plan(percent(1.32)));

        assertThat(Amounts.format(one.revolutions())).isEqualTo("100 rev");
        assertThat(one.pulses().map(Amounts::format)).hasValue("10000 pulse");
        assertThat(Amounts.format(one.runTime(Amounts.of(200, SpreadingUnits.REVOLUTION_PER_MINUTE))))
                .isEqualTo("30 s");
    }

    /** Air in the line: 0.6 % either way is 0.346410 %, and a floor like the marks. */
    @Test
    void airInTheLineIsACauseLikeTheOthers() {
        CatchSetup setup = meter(PAIL)
                .allowing(new CatchAllowances(
                        percent(0), percent(0.6), Optional.empty(), Optional.of(Repeatability.assumed(percent(0.5)))));
        PlanResult.OutOfReach out = outOfReach(CatchPlanner.of(setup).plan(percent(0.9)));

        assertThat(inPercent(row(out.series(), Cause.TRANSIENT).contribution().asType(Dimensionless.class)))
                .isCloseTo(0.346410, SIX_DIGITS);
        assertThat(inPercent(out.floor())).isCloseTo(0.678952 * Math.sqrt(2), within(2e-6));
    }

    @Test
    void aCalibrationPointKnowsWhatItsDischargeIsAsAVolume() {
        PredictedDischarge predicted = PredictedDischarge.of(METER_POINT);
        CatchSetup setup = CatchSetup.at(METER_POINT, PAIL, METER_PULSES, predicted.expected(), CatchLimits.COMMON);

        double pounds = Amounts.in(predicted.expected(), SpreadingUnits.POUND_PER_REVOLUTION);
        assertThat(Amounts.in(
                        setup.expected().asType(VolumePerRevolution.class), SpreadingUnits.US_GALLON_PER_REVOLUTION))
                .isCloseTo(pounds / 9.8, within(1e-15));
        assertThat(setup.count()).isEqualTo(METER_PULSES);
        assertThat(CatchSetup.at(
                                AUGER_POINT,
                                Setups.setup(Setups.scale(0.5), Setups.pails(4, 60), Setups.SIXTY_PULSES)
                                        .amount(),
                                Setups.SIXTY_PULSES,
                                Amounts.of(5, SpreadingUnits.POUND_PER_REVOLUTION),
                                CatchLimits.COMMON)
                        .expected())
                .isEqualTo(Amounts.of(5, SpreadingUnits.POUND_PER_REVOLUTION));
    }

    @Test
    void litersAreSaidInLiters() {
        CatchSetup setup = CatchSetup.of(
                read(graduate(0.05, 0.03), 1, 6), METER_PULSES, Amounts.of(3.154, SpreadingUnits.MILLILITER_PER_PULSE));
        assertThat(CatchPlanner.of(setup)
                        .plan(percent(5))
                        .series()
                        .amountPerCatch()
                        .getUnit())
                .isEqualTo(SpreadingUnits.LITER);
    }

    @Test
    void aVolumeIsNoMass() {
        CatchSeries series = CatchPlanner.of(meter(PAIL)).plan(percent(5)).series();

        assertRefused("caught amount must be a mass: 5 gal", series::massPerCatch);
        assertRefused("caught amount must be a mass: " + Amounts.format(series.totalAmount()), series::totalMass);
    }

    @Test
    void fillsAreStatedAsAPartOfTheCapacityToo() {
        assertThat(PlannedAmount.Read.upTo(graduate(0.05, 0.03), 2, percent(75)))
                .isEqualTo(read(graduate(0.05, 0.03), 2, 4.5));
        assertThat(PlannedAmount.Read.upTo(graduate(0.05, 0.03), 2, percent(100)))
                .isEqualTo(read(graduate(0.05, 0.03), 2, 6));
    }

    @Test
    void whatCantBeIsRefused() {
        Graduate pail = graduate(0.05, 0.03);
        assertRefused("fills of container P-1 must be one or more: 0", () -> read(pail, 0, 5));
        assertRefused("what container P-1 may be filled to must be greater than 0: 0 gal", () -> read(pail, 1, 0));
        assertRefused(
                "what container P-1 may be filled to must be at most its highest mark, 6 gal: 6.1 gal",
                () -> read(pail, 1, 6.1));
        assertRefused(
                "part of the capacity of container P-1 must be greater than 0 and at most 100 %: 110 %",
                () -> PlannedAmount.Read.upTo(pail, 1, percent(110)));
        assertRefused(
                "part of the capacity of container P-1 must be greater than 0 and at most 100 %: 0 %",
                () -> PlannedAmount.Read.upTo(pail, 1, percent(0)));
        assertRefused(
                "uncertainty of the density of the liquid must be given: nothing",
                () -> PlannedAmount.WeighedLiquid.inPails(
                        Setups.scale(0.2), DAY, 1, gallons(5), pounds(2), Measured.once(poundsPerGallon(9.8))));
        assertRefused(
                "what a pail holds must be greater than 0: 0 gal",
                () -> PlannedAmount.WeighedLiquid.inPails(
                        Setups.scale(0.2), DAY, 1, gallons(0), pounds(2), density(0.02)));
        assertRefused(
                "expected discharge per revolution must be a volume, as a liquid is caught: 5 lb/rev",
                () -> CatchSetup.of(PAIL, METER_PULSES, Amounts.of(5, SpreadingUnits.POUND_PER_REVOLUTION)));
        assertRefused(
                "expected discharge per revolution must be a mass, as grains are caught: 0.05 gal/rev",
                () -> CatchSetup.of(
                        Setups.setup(Setups.scale(0.5), Setups.pails(4, 60), Setups.SIXTY_PULSES)
                                .amount(),
                        METER_PULSES,
                        PER_TURN));
        assertRefused(
                "expected discharge per revolution must be a mass, as grains are caught: 5 %",
                () -> CatchSetup.of(
                        Setups.setup(Setups.scale(0.5), Setups.pails(4, 60), Setups.SIXTY_PULSES)
                                .amount(),
                        METER_PULSES,
                        percent(5)));
        assertRefused(
                "expected discharge per revolution must be greater than 0: 0 gal/rev",
                () -> CatchSetup.of(PAIL, METER_PULSES, Amounts.of(0, SpreadingUnits.US_GALLON_PER_REVOLUTION)));
        assertRefused(
                "expected discharge per revolution must be a mass, as grains are caught: 0.05 gal/rev",
                () -> CatchSetup.of(PAIL, METER_PULSES, PER_TURN)
                        .with(Setups.setup(Setups.scale(0.5), Setups.pails(4, 60), Setups.SIXTY_PULSES)
                                .amount()));
    }

    /** 100 divisions of 0.05 gal are 5 gal, and 500 turns of a geared shaft 25. */
    @Test
    void aContainerThatIsTooSmallForAnySensibleCatchIsRefused() {
        assertRefused(
                "containers must be able to hold the smallest sensible catch, 6000 pulse or 5 gal: 4.9 gal in all",
                () -> CatchPlanner.of(meter(read(graduate(0.05, 0.03), 1, 4.9))));
        ShaftSensor geared = new ShaftSensor(
                Amounts.of(10, SpreadingUnits.PULSE_PER_REVOLUTION), Amounts.of(100, SpreadingUnits.ONE));
        assertRefused(
                "containers must be able to hold the smallest sensible catch, 5000 pulse (5 rev of the pump shaft) or 25 gal:"
                        + " 5 gal in all",
                () -> CatchPlanner.of(CatchSetup.of(PAIL, counted(geared), PER_TURN)));
        assertRefused(
                "containers must be able to hold the smallest sensible catch, 100 rev or 5 gal: 4.9 gal in all",
                () -> CatchPlanner.of(CatchSetup.of(
                        read(graduate(0.05, 0.03), 1, 4.9),
                        new PlannedCount.ByEye(Amounts.of(0.1, SpreadingUnits.REVOLUTION)),
                        PER_TURN)));
        assertRefused(
                "tare of a container must be below the capacity of scale S, 500 lb: 500 lb",
                () -> CatchPlanner.of(meter(PlannedAmount.WeighedLiquid.inPails(
                        Setups.scale(0.2), DAY, 1, gallons(5), pounds(500), density(0.02)))));
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        assertNamesWhatIsMissing((Record) PAIL);
        assertNamesWhatIsMissing(weighed(Setups.scale(0.2), 1, 0.02));
        assertNamesWhatIsMissing(weighed(Setups.scale(0.2), 1, 0.02).weighed());
        assertNamesWhatIsMissing(meter(PAIL));
    }

    @Test
    void theSameWordsStandForPumpsAtAPoint() {
        assertThat(CatchSetup.at(
                        pumpPoint(SENSOR),
                        PAIL,
                        counted(SENSOR),
                        Amounts.of(0.49, SpreadingUnits.POUND_PER_REVOLUTION),
                        CatchLimits.COMMON))
                .satisfies(setup -> assertThat(Amounts.in(
                                setup.expected().asType(VolumePerRevolution.class),
                                SpreadingUnits.US_GALLON_PER_REVOLUTION))
                        .isCloseTo(0.05, within(1e-12)));
    }
}
