package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.fleet.assessment.Assessments.reasons;
import static org.gritwright.core.fleet.assessment.Driven.first;
import static org.gritwright.core.fleet.assessment.Written.calibrates;
import static org.gritwright.core.fleet.assessment.Written.inForce;
import static org.gritwright.core.fleet.assessment.Written.verifies;
import static org.gritwright.core.fleet.assessment.Written.withMaterials;
import static org.gritwright.core.fleet.day.Trucks.DAY;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.entry;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.inForce;
import static org.gritwright.core.fleet.day.Trucks.pulses;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.core.fleet.day.Trucks.withRoadSpeed;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.ChangeEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.DensityEntry;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.observation.Material;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What can be read of a truck's entries, and what can't. */
class TruckReaderTest {
    private static final InForceEntry IN_FORCE = inForce("5.2 lb/rev", DAY.minusDays(7));

    @Test
    void nothingIsOfADayToCome() {
        VerificationCatchEntry right = verificationCatch(9, "5.2 lb/rev", 120, 57.7);

        assertThat(reasons(first(day(with(idle("T-1"), DAY.plusDays(1), Change.Part.HYDRAULIC)))))
                .containsExactly(
                        "/trucks/0/changes/0/on: date of a change must be not after the document's own day, 2026-10-19: 2026-10-20");
        assertThat(reasons(first(day(
                        with(idle("T-1"), verifies(Written.at(right.entry(), DAY.plusDays(1), "09:00"), right))))))
                .containsExactly(
                        "/trucks/0/verificationCatches/0/at: catch of 09:00: date of a catch must be not after the"
                                + " document's own day, 2026-10-19: 2026-10-20");
        assertThat(reasons(first(day(withRoadSpeed(idle("T-1"), DAY.plusDays(1), 13_000)))))
                .containsExactly(
                        "/trucks/0/roadSpeed/on: road speed: date of the road-speed check must be not after the"
                                + " document's own day, 2026-10-19: 2026-10-20");
        assertThat(reasons(first(day(
                        with(with(withRoadSpeed(idle("T-1"), DAY, 13_000), DAY, Change.Part.HYDRAULIC), right)))))
                .as("but of the day itself")
                .isEmpty();
    }

    @Test
    void aWrongYearIsSeenInTheDocumentsDayToo() {
        TruckDay nextYear = idle("T-1").inForce(List.of(inForce("5.2 lb/rev", DAY.plusYears(1))));

        assertThat(reasons(first(day(nextYear))))
                .containsExactly(
                        "/trucks/0/inForce/0/since: calibration in force: date of the calibration in force must be not"
                                + " after the document's own day, 2026-10-19 (is one of both years wrong?): 2027-10-19");
    }

    @ParameterizedTest
    @CsvSource({"99, 99, none", "100, 100, none", "101, 101, 1 more reasons", "250, 101, 150 more reasons"})
    void aHundredReasonsAreToldAndOfTheOthersHowMany(int wrong, int told, String rest) {
        ChangeEntry later = new ChangeEntry(DAY.plusDays(1), Change.Part.HYDRAULIC, Optional.empty());
        List<String> reasons = reasons(first(day(idle("T-1").changes(Collections.nCopies(wrong, later)))));

        assertThat(reasons).hasSize(told);
        assertThat(reasons.stream().filter(one -> one.contains("more reasons")).toList())
                .isEqualTo(
                        "none".equals(rest)
                                ? List.of()
                                : List.of("/trucks/0: record must be one that can be computed with: " + rest));
    }

    private static TruckDay listing(InForceEntry... entries) {
        return with(idle("T-1"), entries);
    }

    private static InForceEntry withoutSetting() {
        return inForce(IN_FORCE, "salt", Optional.empty(), Optional.empty());
    }

    @Test
    void aValueWithoutASettingIsForTheOnlyOneThatItsMaterialWasCaughtAt() {
        CalibrationCatchEntry sand =
                calibrates(Written.of("sand", calibrationCatch(9, 3).entry()));
        Material salt = day(idle("T-1")).materials().get(0);
        TruckAssessment once = first(withMaterials(
                day(with(listing(withoutSetting()), calibrationCatch(8, 2), sand)),
                salt,
                Material.of("sand", Amounts.of(90, SpreadingUnits.POUND_PER_CUBIC_FOOT))));

        assertThat(reasons(once)).isEmpty();
        assertThat(once.points())
                .extracting(one -> one.point() + ": " + one.inForce().size())
                .containsExactly("salt at 2 in: 1", "sand at 3 in: 0");
    }

    @Test
    void whereItWasCaughtAtSeveralOrAtNoneItsSettingIsAskedFor() {
        String asked = "/trucks/0/inForce/0/setting: calibration in force: gate setting must be";

        assertThat(reasons(first(day(with(listing(withoutSetting()), calibrationCatch(8, 2), calibrationCatch(9, 3))))))
                .singleElement()
                .satisfies(one -> assertThat(one).startsWith(asked));
        assertThat(reasons(first(day(listing(withoutSetting())))))
                .singleElement()
                .satisfies(one -> assertThat(one).startsWith(asked));
    }

    /** The display is one and shows all its values by the same step. */
    @Test
    void aCatchAtAPointThatNoEntryNamesHasTheStepOfAnotherEntryInItsUnit() {
        VerificationCatchEntry atThree = verificationCatch("7.8 lb/rev", 120, entry(9, 3, 300.3, pulsesOf(38.5)));
        assertThat(first(day(with(listing(IN_FORCE), atThree)))
                        .verifications()
                        .get(0)
                        .source()
                        .inForce()
                        .displayStep())
                .contains(Amounts.parseAny("0.01 lb/rev"));

        VerificationCatchEntry metric = verificationCatch("3.54 kg/rev", 120, entry(9, 3, 300.3, pulsesOf(38.5)));
        assertThat(first(day(with(listing(IN_FORCE), metric)))
                        .verifications()
                        .get(0)
                        .source()
                        .inForce()
                        .displayStep())
                .isEmpty();
    }

    private static Optional<CountEntry> pulsesOf(double revolutions) {
        return Optional.of(pulses(revolutions * 100));
    }

    private static final String WEIGHED = """
            {"format": "gritwright/fleet-day", "formatVersion": 2, "day": "2026-10-19", "seasonStart": "2026-11-01", "tolerance": "4 %",
             "scales": [{"id": "S", "capacity": "400 lb", "division": "0.2 lb", "accuracy": "0.1 %"}],
             "materials": [{"name": "brine", "density": "9.82 lb/gal"}],
             "trucks": [{"id": "A-1", "flowMeter": {"type": "k-factor", "version": 1, "parameters": {"kFactor": "600 pulse/gal"}},
               "verificationCatches": [{"at": "2026-10-19T12:00:00-04:00", "material": "brine", "scale": "S",
                 "containers": [{"container": "tote", "gross": "216.4 lb", "tare": "20 lb"}],
                 "density": {"value": "9.82 lb/gal", "standardUncertainty": "0.01 lb/gal"},
                 "counted": {"pulses": "12000 pulse"}, "inForce": "600 pulse/gal",
                 "targetRate": "40 gal/mi", "testSpeed": "30 mi/h", "runTime": "60 s"}]}]}""";

    @Test
    void aLiquidMayBeWeighedWhereItsDensityIsKnown() {
        TruckAssessment weighed = first(LiquidDays.read(WEIGHED));

        assertThat(reasons(weighed)).isEmpty();
        assertThat(Amounts.format(
                        weighed.verifications().get(0).source().caught().total()))
                .isEqualTo("20 gal");
        assertThat(reasons(first(LiquidDays.read(
                        WEIGHED.replace("\"standardUncertainty\": \"0.01", "\"standardUncertainty\": \"-0.01")))))
                .singleElement()
                .satisfies(one -> assertThat(one).startsWith("/trucks/0/verificationCatches/0/density: "));
    }

    @Test
    void grainsHaveNoDensityOfALiquid() {
        DensityEntry density = new DensityEntry(
                Amounts.of(78, SpreadingUnits.POUND_PER_CUBIC_FOOT),
                Amounts.of(1, SpreadingUnits.POUND_PER_CUBIC_FOOT));

        assertThat(reasons(first(day(with(
                        idle("T-1"), calibrates(calibrationCatch(8, 2).entry().withDensity(density)))))))
                .containsExactly(
                        "/trucks/0/calibrationCatches/0/density: catch of 08:00: density of what was weighed must be"
                                + " left out, as it is no liquid: a density");
    }
}
