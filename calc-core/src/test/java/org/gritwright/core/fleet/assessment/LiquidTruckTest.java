package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleBinaryOperator;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.RouteEntry;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.Yard;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.observation.Material;
import org.gritwright.core.record.CalibrationRecord;
import org.gritwright.core.record.Document;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Trucks with pumps and flow meters, from the document to the record. */
class LiquidTruckTest {
    private static final String SALT = """
            {"id": "T-1", "conveyor": {"type": "auger", "version": 1,
               "parameters": {"screwDiameter": "6 in", "shaftDiameter": "1.5 in", "pitch": "5 in"}},
             "gate": {"type": "no-gate", "version": 1}, "pulsesPerRevolution": "60 pulse/rev", "gearRatio": "1",
             "inForce": [{"value": "5.7 lb/rev", "since": "2026-10-01", "material": "salt"}],
             "verificationCatches": [{"at": "2026-10-19T09:00:00-04:00", "material": "salt", "scale": "S",
               "containers": [{"container": "tarp", "gross": "200 lb", "tare": "12.5 lb"}],
               "counted": {"pulses": "1974 pulse"}, "inForce": "5.7 lb/rev", "targetRate": "300 lb/mi",
               "testSpeed": "25 mi/h", "runTime": "90 s"}],
             "roadSpeed": {"on": "2026-10-19", "inForce": "12600 pulse/mi",
               "runs": [{"course": "1 mi", "pulses": "12600 pulse"}, {"course": "1 mi", "pulses": "12601 pulse"}, {"course": "1 mi", "pulses": "12599 pulse"}]}}""";

    /** 10 gal/ton at 300 lb/mi are 1.5 gal/mi, and at 25 mi/h for 300 s 3.125 gal. */
    private static String brine(String read, String pulses, String prewetRate) {
        return """
            {"id": "T-1 brine", "wets": "T-1",
             "pump": {"type": "displacement-pump", "version": 1, "parameters": {"displacement": "0.016 gal/rev", "slip": "3 %%"}},
             "pulsesPerRevolution": "30 pulse/rev", "gearRatio": "1",
             "inForce": [{"value": "0.0155 gal/rev", "displayStep": "0.0001 gal/rev", "since": "2026-10-01", "material": "brine"}],
             "verificationCatches": [{"at": "2026-10-19T09:30:00-04:00", "material": "brine",
               "read": {"container": "M", "fills": ["%s"]}, "counted": {"pulses": "%s"}, "inForce": "0.0155 gal/rev",
               "targetRate": "300 lb/mi", "prewetRate": "%s", "testSpeed": "25 mi/h", "runTime": "300 s"}]}""".formatted(read, pulses, prewetRate);
    }

    private static FleetDay day(String... trucks) {
        String text = """
                {"format": "gritwright/fleet-day", "formatVersion": 2, "day": "2026-10-19", "seasonStart": "2026-11-01",
                 "tolerance": "4 %%",
                 "scales": [{"id": "S", "capacity": "400 lb", "division": "0.2 lb", "accuracy": "0.1 %%"}],
                 "graduates": [{"id": "M", "capacity": "5.5 gal", "division": "0.02 gal", "tolerance": "0.01 gal"}],
                 "materials": [{"name": "salt", "looseBulkDensity": "78 lb/ft³", "chemical": "96 %%"},
                               {"name": "brine", "density": "9.82 lb/gal", "chemical": "23.3 %%"},
                               {"name": "sand", "looseBulkDensity": "90 lb/ft³"}],
                 "trucks": [%s]}""".formatted(String.join(",", trucks));
        try {
            return Document.FLEET_DAY.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
        } catch (IOException | RejectedDocumentException e) {
            throw new AssertionError(e.getMessage(), e);
        }
    }

    private static List<TruckAssessment> assess(FleetDay day) {
        return FleetAssessor.of(BuiltInTypes.registry()).assess(day);
    }

    private static TruckAssessment ofBrine(String read, String pulses, String prewetRate) {
        return assess(day(SALT, brine(read, pulses, prewetRate))).get(1);
    }

    @Test
    void aPumpThatDeliversWhatItIsAskedForIsProven() {
        TruckAssessment brine = ofBrine("3.12 gal", "6048 pulse", "10 gal/ton");

        assertThat(brine.refusals()).isEmpty();
        assertThat(brine.massProof()).isEqualTo(MassProof.PROVEN);
        assertThat(Amounts.format(brine.verifications().get(0).source().run().targetRate()))
                .isEqualTo("1.5 gal/mi");
        // By hand: a gallon of brine is 9.82 lb, 23.3 % of it salt; a short ton of the grains holds 0.96 × 2000 lb.
        double share = 10 * 9.82 * 0.233 / (2000 * 0.96 + 10 * 9.82 * 0.233);
        assertThat(Amounts.in(brine.prewet().orElseThrow().liquidShare(), SpreadingUnits.PERCENT))
                .isCloseTo(100 * share, within(1e-9));
        assertThat(brine.findings()).extracting(Finding::code).contains(FindingCode.PREWET_SMALL_PART);
    }

    @Test
    void aPassingTotalNeverExcusesAFailingPrewet() {
        // 20 % too little, by a display that doesn't know it.
        TruckAssessment brine = ofBrine("2.5 gal", "6048 pulse", "10 gal/ton");

        assertThat(brine.prewet().orElseThrow().verdict()).isEqualTo(Verdict.WITHIN_TOLERANCE);
        assertThat(brine.massProof()).isEqualTo(MassProof.NOT_PROVEN);
        assertThat(brine.nextStep().needsAttention()).isTrue();
    }

    @Test
    void theTotalIsOffByBothInProportionToWhatTheyBring() {
        PrewetTotal total =
                ofBrine("2.5 gal", "6048 pulse", "10 gal/ton").prewet().orElseThrow();
        // The display of the salt shows 1974 ÷ 60 × 5.7 lb where 187.5 lb fell, that of the brine 3.1248 gal where 2.5
        // gal did.
        double salt = 0.96 / (1974 / 60.0 * 5.7 / 187.5);
        double liquid = 10 * 9.82 * 0.233 / 2000;
        double error = (0.96 + liquid) / (salt + liquid / (6048 / 30.0 * 0.0155 / 2.5)) - 1;

        assertThat(Amounts.in(total.error().value(), SpreadingUnits.PERCENT)).isCloseTo(100 * error, within(1e-9));
        assertThat(total.error().standardUncertainty()).isPresent();
    }

    private static Measured<Dimensionless> judged(TruckAssessment truck) {
        return truck.points().get(0).judged().orElseThrow().judgement().budget().result();
    }

    private static double si(Quantity<Dimensionless> ratio) {
        return Amounts.si(Dimensionless.class, ratio);
    }

    /** By differences of the formula: 0.96 + c of dry chemical asked for, and what falls of each where both displays are off. */
    @ParameterizedTest
    @CsvSource({
        "2.5 gal, 6048 pulse, 10 gal/ton",
        "2.5 gal, 6048 pulse, 100 gal/ton",
        "3.5 gal, 6048 pulse, 100 gal/ton"
    })
    void theTotalIsAsUncertainAsBothMakeIt(String read, String pulses, String rate) {
        List<TruckAssessment> both = assess(day(SALT, brine(read, pulses, rate)));
        Measured<Dimensionless> salt = judged(both.get(0));
        Measured<Dimensionless> liquid = judged(both.get(1));
        double ofLiquid = Amounts.parseAny(rate).getValue().doubleValue() * 9.82 * 0.233 / 2000;
        DoubleBinaryOperator total = (s, l) -> (0.96 + ofLiquid) / (0.96 / (1 + s) + ofLiquid / (1 + l)) - 1;
        double s = si(salt.value());
        double l = si(liquid.value());
        double h = 1e-6;
        double bySalt = (total.applyAsDouble(s + h, l) - total.applyAsDouble(s - h, l)) / (2 * h);
        double byLiquid = (total.applyAsDouble(s, l + h) - total.applyAsDouble(s, l - h)) / (2 * h);
        double expected = Math.hypot(
                bySalt * si(salt.standardUncertainty().orElseThrow()),
                byLiquid * si(liquid.standardUncertainty().orElseThrow()));

        Measured<Dimensionless> error = both.get(1).prewet().orElseThrow().error();
        assertThat(si(error.value())).isCloseTo(total.applyAsDouble(s, l), within(1e-12));
        assertThat(si(error.standardUncertainty().orElseThrow())).isCloseTo(expected, within(1e-6 * expected));
        // Two errors of few degrees of freedom have no fewer together than the one with the fewest.
        double fewest = Math.min(
                salt.degreesOfFreedom().orElseThrow(), liquid.degreesOfFreedom().orElseThrow());
        assertThat(error.degreesOfFreedom().orElseThrow())
                .isGreaterThanOrEqualTo(fewest)
                .isFinite();
    }

    @Test
    void aTotalThatIsOffIsToldAndALargePartIsNoSmallOne() {
        // The display of the salt counts a fifth more than falls.
        String off = SALT.replace("1974 pulse", "2369 pulse");
        TruckAssessment brine =
                assess(day(off, brine("3.12 gal", "6048 pulse", "100 gal/ton"))).get(1);

        assertThat(brine.prewet().orElseThrow().verdict()).isEqualTo(Verdict.OUTSIDE_TOLERANCE);
        assertThat(brine.findings())
                .filteredOn(one -> one.code() == FindingCode.PREWET_TOTAL_OFF)
                .singleElement()
                .satisfies(one -> assertThat(one.sentence()).contains("T-1").contains("4 %"));
        assertThat(brine.findings()).extracting(Finding::code).doesNotContain(FindingCode.PREWET_SMALL_PART);
        assertThat(ofBrine("3.12 gal", "6048 pulse", "100 gal/ton").findings())
                .extracting(Finding::code)
                .doesNotContain(FindingCode.PREWET_TOTAL_OFF);
    }

    @Test
    void aPointThatNobodyVerifiedIsNoPartOfATotal() {
        String second =
                "\"inForce\": [{\"value\": \"5.1 lb/rev\", \"since\": \"2026-10-01\", \"material\": \"sand\"}, ";
        String text = SALT.replace("\"inForce\": [", second);
        FleetDay day = day(text, brine("3.12 gal", "6048 pulse", "10 gal/ton"));

        List<TruckAssessment> both = assess(day);
        assertThat(both.get(0).refusals()).isEmpty();
        assertThat(both.get(0).points()).hasSize(2);
        assertThat(both.get(1).prewet())
                .isEqualTo(ofBrine("3.12 gal", "6048 pulse", "10 gal/ton").prewet());
    }

    @Test
    void wetsHasTheRoadSpeedOfItsTruckAndNothingOfItsOwnToDo() {
        List<TruckAssessment> both = assess(day(SALT, brine("3.12 gal", "6048 pulse", "10 gal/ton")));
        assertThat(both).extracting(TruckAssessment::roadProof).containsOnly(RoadProof.PROVEN);
        assertThat(both.get(1).toDo()).isEmpty();

        String notDriven = SALT.substring(0, SALT.lastIndexOf(',', SALT.indexOf("\"roadSpeed\""))) + "}";
        List<TruckAssessment> unchecked = assess(day(notDriven, brine("3.12 gal", "6048 pulse", "10 gal/ton")));
        assertThat(unchecked.get(0).nextStep()).isEqualTo(NextStep.CHECK_ROAD_SPEED);
        assertThat(unchecked.get(1).toDo()).isEmpty();
        assertThat(unchecked.get(1).roadProof()).isEqualTo(RoadProof.NOT_CHECKED);
    }

    /** A display that takes gallons per tonne for gallons per short ton lays a tenth less: 3.125 gal × 0.907. */
    @ParameterizedTest
    @CsvSource({"10 gal/ton, 10 gal/t, 0.90718474", "10 gal/t, 10 gal/ton, 1.10231131"})
    void anotherTonIsTold(String written, String taken, double factor) {
        double asked = 3.125 * ("10 gal/t".equals(written) ? 0.90718474 : 1) * factor;
        TruckAssessment brine = ofBrine(
                String.format(Locale.ROOT, "%.2f gal", asked),
                String.format(Locale.ROOT, "%.0f pulse", asked / 0.0155 * 30),
                written);

        assertThat(brine.findings())
                .filteredOn(one -> one.code() == FindingCode.PREWET_BY_OTHER_TON)
                .singleElement()
                .satisfies(one -> assertThat(one.sentence()).contains("That fits " + taken + ", not " + written));
        assertThat(brine.toDo()).extracting(ToDo::step).contains(NextStep.CHECK_ENTRIES);
    }

    /** A tenth too little by one rate, and a tenth too much by the other. */
    @Test
    void eachCatchIsComparedWithItsOwnRate() {
        String first = brine("2.83 gal", "5487 pulse", "10 gal/ton");
        String second = brine("3.12 gal", "6048 pulse", "10 gal/t").replace("T09:30", "T10:30");
        String catches = "\"verificationCatches\": [";
        String both = first.substring(0, first.lastIndexOf(']')) + ", "
                + second.substring(second.indexOf(catches) + catches.length());
        TruckAssessment brine = assess(day(SALT, both)).get(1);

        assertThat(brine.verifications()).hasSize(2);
        assertThat(brine.findings())
                .filteredOn(one -> one.code() == FindingCode.PREWET_BY_OTHER_TON)
                .singleElement()
                .satisfies(one -> assertThat(one.sentence()).contains("That fits 10 gal/t, not 10 gal/ton"));
    }

    /** What wets is asked for by the rate of the grains: 3.125 gal ÷ 3.548. */
    @Test
    void aRateOfGrainsInAnotherUnitIsTold() {
        TruckAssessment brine = ofBrine("0.88 gal", "1704 pulse", "10 gal/ton");

        assertThat(brine.findings())
                .filteredOn(one -> one.code() == FindingCode.RATE_IN_OTHER_UNIT)
                .singleElement()
                .satisfies(one -> assertThat(one.sentence()).contains("84.55 lb/mi, not 300 lb/mi"));
        assertThat(brine.nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
    }

    /** 80 gal/mi are 188.2 L/km: a display that takes the number for L/km lays 40 gal ÷ 2.352. */
    @ParameterizedTest
    @CsvSource({"17.0, L/km", "94.1, other"})
    void aRateLaidAloneInAnotherUnitIsTold(double gallons, String unit) {
        String meter = """
                {"id": "A-1", "flowMeter": {"type": "k-factor", "version": 1, "parameters": {"kFactor": "600 pulse/gal"}},
                 "inForce": [{"value": "600 pulse/gal", "since": "2026-10-01", "material": "brine"}],
                 "verificationCatches": [{"at": "2026-10-19T09:30:00-04:00", "material": "brine", "read": {"container": "M",
                   "fills": [%s]}, "counted": {"pulses": "%.0f pulse"}, "inForce": "600 pulse/gal", "targetRate": "80 gal/mi",
                   "testSpeed": "30 mi/h", "runTime": "60 s"}]}""".formatted(
                        String.join(", ", Collections.nCopies(20, "\"" + gallons / 20 + " gal\"")), gallons * 600);

        assertThat(assess(day(meter)).get(0).findings())
                .filteredOn(one -> one.code() == FindingCode.RATE_IN_OTHER_UNIT)
                .singleElement()
                .satisfies(one -> assertThat(one.sentence())
                        .contains("L/km".equals(unit) ? "34.01 gal/mi, not 80 gal/mi" : "188.2 gal/mi, not 80 gal/mi"));
    }

    @Test
    void aRightDeliveryIsNoOtherTon() {
        assertThat(ofBrine("3.12 gal", "6048 pulse", "10 gal/ton").findings())
                .extracting(Finding::code)
                .doesNotContain(FindingCode.PREWET_BY_OTHER_TON);
    }

    @Test
    void airInTheLineIsAFaultAndNoCorrection() {
        TruckAssessment brine = ofBrine("1.3 gal", "6048 pulse", "10 gal/ton");

        assertThat(brine.nextStep()).isEqualTo(NextStep.FIND_FAULT);
        assertThat(brine.findings()).extracting(Finding::code).contains(FindingCode.PUMPED_VOLUME_IMPLAUSIBLE);
    }

    @Test
    void recordsOfLiquidsAreReadBackAndLeadToTheNextDay() throws IOException, RejectedDocumentException {
        FleetDay day = day(SALT, brine("2.8 gal", "6048 pulse", "10 gal/ton"));
        for (TruckAssessment one : assess(day)) {
            CalibrationRecord record = CalibrationRecord.of(day, one);
            String text = Document.CALIBRATION_RECORD.toText(record);

            assertThat(Document.CALIBRATION_RECORD.read(
                            new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8))))
                    .isEqualTo(record);
            assertThat(record.nextDay(BuiltInTypes.registry()).spreader())
                    .isEqualTo(one.truck().spreader());
            assertThat(record.inForceAfter(BuiltInTypes.registry())).isEqualTo(one.inForceAfter());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'\"read\": {\"container\": \"M\", \"fills\": [\"3.12 gal\"]}'|'\"read\": {\"container\": \"N\", \"fills\": [\"3.12 gal\"]}'|container with marks must be one of [M]",
                "'\"read\": {\"container\": \"M\", \"fills\": [\"3.12 gal\"]}'|'\"read\": {\"container\": \"M\", \"fills\": [\"9 gal\"]}'|highest mark",
                "'\"read\": {\"container\": \"M\", \"fills\": [\"3.12 gal\"]}'|'\"read\": {\"container\": \"M\", \"fills\": [\"3.12 gal\"]}, \"scale\": \"S\"'|left out, or scale, containers and density are",
                "'\"read\": {\"container\": \"M\", \"fills\": [\"3.12 gal\"]}'|'\"scale\": \"S\", \"containers\": [{\"container\": \"pail\", \"gross\": \"34 lb\", \"tare\": \"3 lb\"}]'|density of what was weighed must be given, as it is a liquid",
                "'\"read\": {\"container\": \"M\", \"fills\": [\"3.12 gal\"]}'|'\"operator\": \"nobody\"'|scale of a catch must be given",
                "'\"prewetRate\": \"10 gal/ton\", '|''|a volume per distance, as brine is a liquid",
                "'\"targetRate\": \"300 lb/mi\"'|'\"targetRate\": \"20 gal/mi\"'|that of the dry material, a mass per distance",
                "'\"material\": \"brine\", \"read\"'|'\"material\": \"salt\", \"read\"'|a pump or a flow meter meters it"
            })
    void whatDoesNotFitTogetherIsRefusedInWords(String right, String wrong, String words) {
        String written = brine("3.12 gal", "6048 pulse", "10 gal/ton").replaceAll("\\s+", " ");
        assertThat(written).contains(right);
        List<TruckAssessment> both = assess(day(SALT, written.replace(right, wrong)));

        assertThat(both.get(0).refusals()).isEmpty();
        assertThat(both.get(1).refusals())
                .extracting(Refusal::sentence)
                .anySatisfy(one -> assertThat(one).contains(words));
    }

    @ParameterizedTest
    @CsvSource({"20, 40, HELD", "20, 90, NOT_HELD", "1, 40, NOT_HELD"})
    void aRouteWhoseFlowTheMeterDoesNotCountIsTold(double slowest, double fastest, String status) {
        String meter = """
                {"id": "A-1", "flowMeter": {"type": "k-factor", "version": 1, "parameters": {"kFactor": "600 pulse/gal",
                   "lowFlowCutoff": "5 gal/min", "highestFlow": "100 gal/min"}},
                 "inForce": [{"value": "600 pulse/gal", "since": "2026-10-01", "material": "brine"}]}""";
        FleetDay day = day(meter)
                .withRoutes(List.of(new RouteEntry(
                        "parkway",
                        "brine",
                        new TargetEntry(
                                Optional.empty(),
                                Optional.of(Amounts.of(40, SpreadingUnits.US_GALLON_PER_LANE_MILE)),
                                Optional.of(Amounts.of(2, SpreadingUnits.LANE)),
                                Optional.empty()),
                        Amounts.of(slowest, SpreadingUnits.MILE_PER_HOUR),
                        Amounts.of(fastest, SpreadingUnits.MILE_PER_HOUR),
                        List.of())));
        TruckAssessment truck = assess(day).get(0);
        // 80 gal/mi are 1.333 gal/min for each mi/h.
        boolean held = "HELD".equals(status);

        assertThat(truck.refusals()).isEmpty();
        assertThat(truck.routes().get(0).status())
                .isEqualTo(held ? RouteAssessment.Status.RANGE_NOT_KNOWN : RouteAssessment.Status.NOT_HELD);
        assertThat(truck.findings())
                .filteredOn(one -> one.code().id().startsWith("route-"))
                .extracting(Finding::code)
                .isEqualTo(held ? List.of() : List.of(FindingCode.ROUTE_OUTSIDE_METER));
        assertThat(truck.toDo().stream().anyMatch(one -> one.step() == NextStep.FIT_TO_DRIVE))
                .isEqualTo(!held);
        if (fastest == 90) {
            assertThat(truck.findings())
                    .extracting(Finding::sentence)
                    .anySatisfy(
                            one -> assertThat(one).startsWith("Route parkway: 80 gal/mi at 90 mi/h needs 120 gal/min"));
        }
    }

    @Test
    void withoutACountOfTheLiquidThereIsNoTotal() {
        String counted = brine("3.12 gal", "6048 pulse", "10 gal/ton");
        String uncounted = counted.replace("\"counted\": {\"pulses\": \"6048 pulse\"}, ", "");

        assertThat(uncounted).isNotEqualTo(counted);
        assertThat(assess(day(SALT, uncounted)).get(1).refusals()).isEmpty();
        assertThat(assess(day(SALT, uncounted)).get(1).prewet()).isEmpty();
    }

    /** Sand that is wetted with water, to lay the dust. */
    @Test
    void whereNothingIsOfDryChemicalThereIsNoTotal() {
        FleetDay day = day(SALT, brine("3.12 gal", "6048 pulse", "10 gal/ton"));
        List<Material> without = day.materials().stream()
                .map(one -> one.withChemical(Amounts.of(0, SpreadingUnits.PERCENT)))
                .toList();
        TruckAssessment water = assess(Written.withMaterials(day, without.toArray(Material[]::new)))
                .get(1);

        assertThat(water.refusals()).isEmpty();
        assertThat(water.prewet()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"4.99, true", "5, false"})
    void aPartOfATwentiethIsNoSmallOne(double percent, boolean told) {
        FleetDay day = day(SALT, brine("3.12 gal", "6048 pulse", "10 gal/ton"));
        PrewetTotal total = assess(day).get(1).prewet().orElseThrow();
        PrewetTotal other = new PrewetTotal(
                total.truck(),
                total.prewetRate(),
                Amounts.of(percent, SpreadingUnits.PERCENT),
                total.error(),
                total.verdict());

        assertThat(other.findings(Yard.of(day)))
                .extracting(Finding::code)
                .isEqualTo(told ? List.of(FindingCode.PREWET_SMALL_PART) : List.of());
    }

    /** By the display a tenth too little fell, but all of it was caught: no rate was mistaken, the display is wrong. */
    @Test
    void whereDisplayAndCatchDisagreeNoOtherTonIsGuessed() {
        TruckAssessment brine = ofBrine("3.12 gal", "5487 pulse", "10 gal/ton");
        assertThat(brine.verifications()).hasSize(1);
        assertThat(brine.findings()).extracting(Finding::code).doesNotContain(FindingCode.PREWET_BY_OTHER_TON);
    }

    private static String changed(String on, String part) {
        return SALT.replace(
                "\"inForce\": [{\"value\": \"5.7 lb/rev\"",
                "\"changes\": [{\"on\": \"" + on + "\", \"part\": \"" + part
                        + "\"}], \"inForce\": [{\"value\": \"5.7 lb/rev\"");
    }

    /** The road speed of both was checked on 2026-10-19. */
    @ParameterizedTest
    @CsvSource({
        "2026-10-19, 2026-10-18, tire, true",
        "2026-10-19, 2026-10-19, tire, true",
        "2026-10-18, 2026-10-19, tire, false",
        "2026-10-18, 2026-10-19, hydraulic, true"
    })
    void newTiresOfTheTruckAskForItsRoadSpeedAgain(String checked, String changed, String part, boolean proven) {
        String text = changed(changed, part)
                .replace("\"roadSpeed\": {\"on\": \"2026-10-19\"", "\"roadSpeed\": {\"on\": \"" + checked + "\"");
        List<TruckAssessment> both = assess(day(text, brine("3.12 gal", "6048 pulse", "10 gal/ton")));

        assertThat(both).allSatisfy(one -> {
            assertThat(one.refusals()).isEmpty();
            assertThat(one.roadProof()).isEqualTo(proven ? RoadProof.PROVEN : RoadProof.NOT_CHECKED);
            assertThat(one.findings())
                    .extracting(Finding::code)
                    .satisfies(codes -> assertThat(codes.contains(FindingCode.ROAD_SPEED_BEFORE_CHANGE))
                            .isEqualTo(!proven));
        });
    }
}
