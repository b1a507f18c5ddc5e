package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.assertj.core.util.DoubleComparator;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.spi.Setting;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the demo fleet was made to show, truck by truck. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DemoFleetTest {
    private FleetResult result;

    @BeforeAll
    void assess() throws IOException, RejectedDocumentException {
        result = DemoDay.result(day -> {});
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', nullValues = "none", textBlock = """
            T-01 | NOTHING          | Nothing to do
            T-02 | CHECK_ROAD_SPEED | Check the road speed over a measured course
            T-03 | NOTHING          | Nothing to do
            T-04 | NOTHING          | Nothing to do
            T-05 | FIND_FAULT       | Check what was written down; if it is right, find the fault and catch again
            T-06 | CHECK_DELIVERY   | Check start-up, valve and speed limits
            T-07 | FIT_TO_DRIVE     | On ridge road 51 km/h at most, or calibrate a wider gate opening
            T-08 | CHECK_ROAD_SPEED | Check the road speed over a measured course
            T-09 | CALIBRATE        | Calibrate
            T-10 | FIX_ROAD_SPEED   | Enter 12303 pulse/mi in place of 13200 pulse/mi, drive the course again
            T-11 | ENTER_CORRECTION | Enter 5.68 lb/rev for road salt in slot 1 in place of 5.35 lb/rev, read it back, catch again
            T-12 | FIT_TO_DRIVE     | Fit rates, speeds or gate to what the conveyor holds
            T-13 | FIX_RECORD       | Correct what was written down
            T-14 | FIND_FAULT       | Check what was written down; if it is right, find the fault and catch again
            T-15 | CATCH_MORE       | Catch 203 kg more with the same value in the display, in 3 catches like the last
            T-16 | NOTHING          | Nothing to do
            T-17 | NOTHING          | Nothing to do
            T-18 | NOTHING          | Nothing to do
            T-19 | NOTHING          | Nothing to do
            T-20 | NOTHING          | Nothing to do
            """)
    void nextStep(String id, String step, String instruction) {
        TruckResult truck = truck(id);
        assertThat(truck.assessment().nextStep()).hasToString(step);
        assertThat(truck.instruction().text()).isEqualTo(instruction);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            T-04 | The calibration error of 6.07 % is outside the tolerance of 4 %: the truck lays 5.723 % too little.
            T-05 | gate opening ÷ 10 (2 in)
            T-06 | Each start loses about 21.4 lb or 6.409 s
            T-01 | The drive was measured without the spinner
            T-07 | 85 kg/km at 60 km/h needs 32.56 rev/min for sand-salt mix at 50 mm, but the drive holds 28 rev/min at most
            T-09 | is older than the hydraulic change of 2026-10-08
            T-12 | Scale hanging 4 was not checked
            T-12 | a limit of 11.84 %, which explains the 12.94 % that are missing
            T-17 | nobody can tell whether it can do route hill road: measure the drive
            T-14 | The catches scatter by 11.86 % of their mean
            T-14 | two digits in the gross mass of pail 1 swapped (54.5 lb), catch of 2026-10-19 16:12
            T-15 | Nothing was counted or displayed
            T-16 | is older than the season that starts 2026-11-01
            T-17 | By the curve, discharge starts at a gate opening of 0.3664 in
            """)
    void finding(String id, String words) {
        assertThat(truck(id).assessment().findings())
                .anySatisfy(finding -> assertThat(finding.sentence()).contains(words));
    }

    @ParameterizedTest
    @ValueSource(strings = {"T-18", "T-19", "T-20"})
    void nothingToLookAt(String id) {
        assertThat(truck(id).assessment().findings()).isEmpty();
        assertThat(truck(id).assessment().verdict()).isEqualTo("conveyor right, road speed right");
    }

    /** 16.59, 31.21 and 53.18 lb/rev at 1.5, 2.5 and 4 in lie on a line that starts at about 0.37 in. */
    @Test
    void theTruckWithThreeOpeningsHasACurveChosenByTest() {
        assertThat(truck("T-17").assessment().curves()).singleElement().satisfies(curve -> {
            assertThat(curve.model()).isEqualTo(CurveModel.DEAD_OPENING);
            assertThat(curve.settings().stream().map(Setting::toString)).containsExactly("1.5 in", "2.5 in", "4 in");
            assertThat(curve.catches()).hasSize(9);
            assertThat(curve.test())
                    .hasValueSatisfying(test -> assertThat(test.chance()).isGreaterThan(0.05));
        });
        assertThat(result.trucks())
                .filteredOn(truck -> !truck.id().equals("T-17"))
                .allSatisfy(truck -> assertThat(truck.assessment().curves()).isEmpty());
    }

    /** 30 rev/min at setting 4: 29 revolutions in 58 s. */
    @Test
    void theTruckWithoutFeedbackIsCalibratedByItsTableOfSettings() {
        Calibration calibration = truck("T-15").calibrations().get(0);
        assertThat(calibration.catches())
                .extracting(CalibrationCatch::revolutions)
                .usingComparatorForType(new DoubleComparator(1e-9), Double.class)
                .containsExactly(29.0, 31.0, 30.0);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            T-05 | gate opening ÷ 10 (2 in)?
            T-14 | two digits in the gross mass of pail 1 swapped (54.5 lb), catch of 2026-10-19 16:12?
            T-11 | tolerance missed
            T-10 | road speed off
            """)
    void theReasonInAFewWords(String id, String words) {
        assertThat(truck(id).instruction().shortReason()).isEqualTo(words);
    }

    /** T-01 and T-07 were measured both ways, T-15 at its control settings; T-03 by eye, T-12 a year ago. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            T-01 | MEASURED   | 44.0 rev/min | town: can do it
            T-03 | BY_EYE     | 40.0 rev/min | town: can do it
            T-07 | MEASURED   | 28.0 rev/min | ridge road: can't hold rate and speeds
            T-12 | MEASURED   | 40.0 rev/min | hill road: can do it
            T-15 | MEASURED   | 47.0 rev/min | ridge road: can do it
            """)
    void whatTheDriveHoldsAndTheRoutesAsk(String id, String source, String highest, String route) {
        TruckAssessment truck = truck(id).assessment();
        assertThat(truck.drive().orElseThrow().source().orElseThrow()).hasToString(source);
        assertThat(Figures.text(
                        truck.drive().orElseThrow().range().orElseThrow().highest(), 3))
                .isEqualTo(highest);
        assertThat(truck.routes())
                .extracting(one -> one.route().name() + ": " + one.status().words())
                .containsExactly(route);
    }

    private TruckResult truck(String id) {
        return result.trucks().stream()
                .filter(truck -> truck.id().equals(id))
                .findFirst()
                .orElseThrow();
    }
}
