package org.gritwright.core.fleet.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.fleet.review.EnteredDays.CHAIN;
import static org.gritwright.core.fleet.review.EnteredDays.FOUR;
import static org.gritwright.core.fleet.review.EnteredDays.calibration;
import static org.gritwright.core.fleet.review.EnteredDays.day;
import static org.gritwright.core.fleet.review.EnteredDays.net;
import static org.gritwright.core.fleet.review.EnteredDays.time;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.Slip;
import org.gritwright.core.finding.Slip.Mistake;
import org.gritwright.core.finding.Term;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** Which of the slips that were tried are told. */
class SlipsOfADayTest {
    private static final Slip SIXTEEN = Slip.byFactor(Term.PARAMETER, Mistake.TOO_LARGE, 2, Amounts.parseAny("16 in"))
            .of("pitch");

    private static List<String> told(Sketch day, boolean contradicted, Slip... ofFleet) {
        return ProbableSlips.of(day, CHAIN, EnteredDays.TYPES, List.of(ofFleet), contradicted).stream()
                .map(Finding::sentence)
                .flatMap(sentence ->
                        List.of(sentence.replaceFirst(".*first: ", "")
                                        .replaceFirst("\\.$", "")
                                        .split("; ", -1))
                                .stream())
                .toList();
    }

    private static Sketch caught(double... pounds) {
        List<CalibrationCatch> catches = new ArrayList<>();
        for (double one : pounds) {
            catches.add(calibration(15 * catches.size(), FOUR, net(one), 1000));
        }
        return day(catches, List.of());
    }

    private static int toldOf(Slip... ofFleet) {
        return told(caught(400, 400, 400), false, ofFleet).size();
    }

    private static Slip digits(Term term, String value) {
        Quantity<?> instead = Amounts.parseAny(value);
        return Slip.of(term, Mistake.DIGITS_SWAPPED, List.of(instead));
    }

    /** 16 in is 16 in, however it came about. */
    @Test
    void whatSaysTheSameOfTheSameThingIsToldOnce() {
        assertThat(toldOf(SIXTEEN, digits(Term.PARAMETER, "16 in").of("pitch"))).isEqualTo(1);
    }

    @Test
    void whatSaysAnythingElseIsToldBeside() {
        assertThat(toldOf(SIXTEEN, digits(Term.GATE_SETTING, "16 in").of("pitch")))
                .isEqualTo(2);
        assertThat(toldOf(SIXTEEN, digits(Term.PARAMETER, "16 in").of("width"))).isEqualTo(2);
        assertThat(toldOf(SIXTEEN, digits(Term.PARAMETER, "16 in").of("pitch").in(List.of(time(0)))))
                .isEqualTo(2);
        assertThat(toldOf(SIXTEEN, digits(Term.PARAMETER, "17 in").of("pitch"))).isEqualTo(2);
        assertThat(toldOf(SIXTEEN, digits(Term.PARAMETER, "16 cm").of("pitch"))).isEqualTo(2);
    }

    @Test
    void slipsOfOneAndOfTwoValuesAreNotTheSame() {
        Slip two = Slip.of(
                        Term.PARAMETER,
                        Mistake.DIGITS_SWAPPED,
                        List.of(Amounts.parseAny("16 in"), Amounts.parseAny("61 in")))
                .of("pitch");

        assertThat(toldOf(SIXTEEN, two)).isEqualTo(2);
        assertThat(toldOf(two, SIXTEEN)).isEqualTo(2);
    }

    @Test
    void slipsWithoutAValueAreNotTheSame() {
        assertThat(toldOf(
                        Slip.of(Term.REVOLUTIONS, Mistake.TURN_TOO_MANY, List.of()),
                        Slip.of(Term.REVOLUTIONS, Mistake.RUN_TIME_INSTEAD, List.of())))
                .isEqualTo(2);
    }

    @Test
    void aSoundDayTellsOfNoSlipEvenIfSomethingElseIsWrong() {
        assertThat(told(caught(400, 400, 400), false)).isEmpty();
        assertThat(told(caught(400, 400, 400), true)).isEmpty();
    }

    /** Twice what a turn sweeps. */
    @Test
    void aSlipOfEquipmentIsSearchedWhereTheFillIsFarFromUsual() {
        assertThat(told(caught(1000, 1001, 999), false))
                .contains("teeth × 2 (12)")
                .first()
                .isEqualTo("gate opening × 2.54 (10.16 in)");
    }

    /** 46 % is e^2.8 times less likely than the usual 76 %, and half the teeth would make 92 % of it. */
    @Test
    void whereSomethingElseIsWrongWhatExplainsADayTwiceAsWellIsTold() {
        assertThat(told(caught(230, 230.2, 230.1), false)).isEmpty();
        assertThat(told(caught(230, 230.2, 230.1), true)).contains("teeth ÷ 2 (3)");
    }

    /** Ten times as much as usual, in a single catch: 4500 lb instead of 450 lb with its box. */
    @Test
    void aSlipOfOneCatchIsSearchedWhereCatchesDifferOrSomethingElseIsWrong() {
        String tenth = "gross mass of box ÷ 10 (450 lb), catch of 2026-10-19 08:00";
        assertThat(told(caught(4450), false)).doesNotContain(tenth).isNotEmpty();
        assertThat(told(caught(4450), true)).contains(tenth);
        assertThat(told(caught(4450, 400), false)).contains(tenth);
    }

    @Test
    void whatTheFleetShowsComesAloneAndFirst() {
        assertThat(told(caught(1000, 1001, 999), false, SIXTEEN)).containsExactly("pitch ÷ 2 (16 in)");
    }

    /** A gate that is shut up to the mark 5: at 1 instead of 10 it would lay nothing, and no catch could come of that. */
    @Test
    void aSlipThatWouldHaveLaidNothingHidesNoOther() {
        SpreaderEntry marked = new SpreaderEntry(
                CHAIN.conveyor(),
                new TypedEntry(
                        "setting-table",
                        1,
                        Map.of(
                                "settings",
                                List.of(
                                        Amounts.of(0, SpreadingUnits.ONE),
                                        Amounts.of(5, SpreadingUnits.ONE),
                                        Amounts.of(10, SpreadingUnits.ONE)),
                                "areas",
                                List.of(
                                        Amounts.of(0, SpreadingUnits.SQUARE_INCH),
                                        Amounts.of(0, SpreadingUnits.SQUARE_INCH),
                                        Amounts.of(96, SpreadingUnits.SQUARE_INCH)))),
                CHAIN.pulsesPerRevolution(),
                CHAIN.gearRatio(),
                List.of(),
                Optional.empty());
        CalibrationPoint point = CalibrationPoint.of(
                EnteredDays.SALT, marked.metering(EnteredDays.TYPES), Setting.of(Amounts.of(10, SpreadingUnits.ONE)));
        Sketch day = day(List.of(calibration(0, point, net(4450), 1000)), List.of());

        assertThat(ProbableSlips.of(day, marked, EnteredDays.TYPES, List.of(), true)
                        .map(Finding::sentence))
                .hasValueSatisfying(sentence -> assertThat(sentence).contains("gross mass of box ÷ 10 (450 lb)"));
    }
}
