package org.gritwright.core.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.chart.Trucks.ENVELOPE;
import static org.gritwright.core.chart.Trucks.SEVEN;
import static org.gritwright.core.chart.Trucks.rate;
import static org.gritwright.core.chart.Trucks.rpm;
import static org.gritwright.core.chart.Trucks.setting;
import static org.gritwright.core.chart.Trucks.speed;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.envelope.BelowRange;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.envelope.Limit;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("locale")
class CabCardTest {
    static final LocalDate DAY = Samples.DAY;

    static FeedbackLine<ApplicationRate> line(Envelope envelope, double poundsPerMile) {
        return new FeedbackLine<>(envelope, RateBasis.perDistance(), rate(poundsPerMile));
    }

    static OpenLoopLine<ApplicationRate> openLoop(double poundsPerMile, double percent, ControlSetting... settings) {
        return new OpenLoopLine<>(
                SEVEN,
                List.of(settings),
                RateBasis.perDistance(),
                rate(poundsPerMile),
                Amounts.of(percent, SpreadingUnits.PERCENT));
    }

    static CardSection section(CardLine<?>... lines) {
        return new CardSection(
                "road salt", Samples.height(2), Optional.of(CalibrationFactor.parse("7 lb/rev")), List.of(lines));
    }

    private static CabCard card(Optional<LocalDate> validUntil) {
        return new CabCard(
                "T-12", DAY, "A. Miller", validUntil, List.of("gate repaired"), List.of(section(line(ENVELOPE, 300))));
    }

    /** 35 × 60 ÷ 260 = 8.077 mi/h and 350 × 60 ÷ 260 = 80.77 mi/h, to whole miles per hour. */
    @Test
    void aCardPromisesFromTheLowestSpeedRoundedUpToTheHighestRoundedDown() {
        FeedbackLine<ApplicationRate> line = line(ENVELOPE, 260);

        assertThat(line.held()).contains(new HeldSpeeds(Optional.of(speed(9)), speed(80)));
        assertThat(line.held().orElseThrow()).hasToString("9 mi/h to 80 mi/h");
        assertThat(line.exact()).isEqualTo(ENVELOPE.speedsFor(rate(260)));
        assertThat(line.words())
                .containsExactly(
                        "slow down above 80 mi/h: the drive turns the shaft no faster",
                        "below 9 mi/h too much is laid: the shaft can't turn more slowly and stay steady");
    }

    @Test
    void whereTheShaftStopsBelowItsRangeTheCardSaysThatNothingIsLaid() {
        assertThat(line(ENVELOPE.with(BelowRange.STOPS), 260).words())
                .contains("below 9 mi/h nothing is laid: the shaft can't turn more slowly and stay steady");
    }

    @Test
    void withoutALowerLimitTheCardNamesTheUpperOneOnly() {
        FeedbackLine<ApplicationRate> line = line(Envelope.of(SEVEN, new WorkingRange(rpm(0), rpm(50))), 260);

        assertThat(line.held().orElseThrow()).hasToString("up to 80 mi/h");
        assertThat(line.words()).containsExactly("slow down above 80 mi/h: the drive turns the shaft no faster");
    }

    /** 7 lb/rev × 20.1 rev/min × 60 ÷ 300 = 28.14 mi/h and 28.10 at 20.07: 29 isn't below 28. */
    @Test
    void whereRoundingLeavesNoSpeedNothingIsPromised() {
        FeedbackLine<ApplicationRate> line = line(Envelope.of(SEVEN, new WorkingRange(rpm(20.07), rpm(20.1))), 300);

        assertThat(line.held()).isEmpty();
        assertThat(line.words()).containsExactly("no speed holds it: the drive turns the shaft no faster");
    }

    @Test
    void aSingleSpeedIsAPromise() {
        FeedbackLine<ApplicationRate> line = line(Envelope.of(SEVEN, new WorkingRange(rpm(20), rpm(20))), 300);

        // 140 lb/min × 60 ÷ 300.
        assertThat(line.held().orElseThrow()).hasToString("28 mi/h to 28 mi/h");
    }

    @Test
    void aSpeedThatIsLessThanItsUncertaintyIsNoPromise() {
        Envelope unsure = Envelope.of(Trucks.discharge(7, 14), new WorkingRange(rpm(0), rpm(50)));

        assertThat(line(unsure, 300).held()).isEmpty();
    }

    @Test
    void grainsThatRunMoreSlowlyThanAnyShaftLeaveNothing() {
        FeedbackLine<ApplicationRate> line =
                line(ENVELOPE.withGreatestFlow(Amounts.of(20, SpreadingUnits.POUND_PER_MINUTE)), 300);

        assertThat(line.held()).isEmpty();
        assertThat(line.words()).containsExactly("no speed holds it: " + Limit.GRAIN_FLOW.words());
    }

    /** Setting 4: 7 × 30 × 60 ÷ 420 = 30 mi/h; within 10 % from 27.27 to 33.33, steps of 0.2. Setting 2: 10, 9.09 and 11.11. */
    @Test
    void withoutFeedbackEachSettingHasItsSpeeds() {
        OpenLoopLine<ApplicationRate> line = openLoop(420, 10, setting(4, 30), setting(0, 0), setting(2, 10));

        assertThat(line.settings()).containsExactly(setting(0, 0), setting(2, 10), setting(4, 30));
        assertThat(line.words()).containsExactly("set 2 for 9.1 mi/h to 11.1 mi/h", "set 4 for 27.4 mi/h to 33.2 mi/h");
        OpenLoopLine.AtSetting four = line.atSettings().get(1);
        assertThat(four.setting()).isEqualTo(setting(4, 30));
        assertThat(Amounts.in(four.nominal().value(), SpreadingUnits.MILE_PER_HOUR))
                .isCloseTo(30, within(1e-11));
        assertThat(Amounts.in(four.lowest().value(), SpreadingUnits.MILE_PER_HOUR))
                .isCloseTo(30 / 1.1, within(1e-11));
        assertThat(Amounts.in(four.highest().value(), SpreadingUnits.MILE_PER_HOUR))
                .isCloseTo(30 / 0.9, within(1e-11));
        assertThat(Amounts.in(four.nominal().standardUncertainty().orElseThrow(), SpreadingUnits.MILE_PER_HOUR))
                .isCloseTo(0.3, within(1e-11));
    }

    /** 7 × 30 × 60 ÷ 425 = 29.65 mi/h, within 0.1 % from 29.62 to 29.68: no multiple of 0.2. */
    @Test
    void whereNoSettingServesTheCardSaysSo() {
        assertThat(openLoop(425, 0.1, setting(4, 30)).words()).containsExactly("no setting lays it within 0.1 %");
        assertThat(openLoop(420, 10, setting(0, 0)).atSettings()).isEmpty();
    }

    @Test
    void aCardIsValidFromTheCalibrationToItsLastDay() {
        CabCard card = card(Optional.of(DAY.plusDays(30)));

        assertThat(card.isValidOn(DAY.minusDays(1))).isFalse();
        assertThat(card.isValidOn(DAY)).isTrue();
        assertThat(card.isValidOn(DAY.plusDays(30))).isTrue();
        assertThat(card.isValidOn(DAY.plusDays(31))).isFalse();
        assertThat(card(Optional.empty()).isValidOn(DAY.plusYears(9))).isTrue();
        assertThat(card(Optional.of(DAY)).isValidOn(DAY)).isTrue();
        assertThat(card).isEqualTo(card(Optional.of(DAY.plusDays(30))));
    }

    @Test
    void whereTheDriveWasntMeasuredACardSaysOnlyWhatToSet() {
        assertThat(section().lines()).isEmpty();
        assertThat(section().display()).contains(CalibrationFactor.parse("7 lb/rev"));
    }

    @Test
    void aCardKeepsItsOwnLists() {
        List<String> voids = new ArrayList<>(List.of("gate repaired"));
        CabCard card =
                new CabCard("T-12", DAY, "A. Miller", Optional.empty(), voids, List.of(section(line(ENVELOPE, 300))));
        voids.clear();

        assertThat(card.voidedBy()).containsExactly("gate repaired");
    }

    @Test
    void whatCantBeACardIsRefused() {
        List<CardSection> sections = List.of(section(line(ENVELOPE, 300)));
        Optional<LocalDate> none = Optional.empty();

        assertRefused(
                "last day of a card must be not before 2026-10-19: 2026-10-18",
                () -> card(Optional.of(DAY.minusDays(1))));
        assertRefused(
                "truck must be a text that is not blank: \"\"",
                () -> new CabCard("", DAY, "A. Miller", none, List.of(), sections));
        assertRefused(
                "who answers for the card must be a text that is not blank: \"\"",
                () -> new CabCard("T-12", DAY, "", none, List.of(), sections));
        assertRefused(
                "what voids a card must be a text that is not blank: \" \"",
                () -> new CabCard("T-12", DAY, "A. Miller", none, List.of(" "), sections));
        assertRefused(
                "materials of a card must be one or more: none",
                () -> new CabCard("T-12", DAY, "A. Miller", none, List.of(), List.of()));
        assertRefused(
                "materials of a card must be at most 100: more",
                () -> new CabCard(
                        "T-12", DAY, "A. Miller", none, List.of(), Collections.nCopies(101, sections.get(0))));
        assertRefused(
                "what voids a card must be at most 100: more",
                () -> new CabCard("T-12", DAY, "A. Miller", none, Collections.nCopies(101, "repair"), sections));
        assertRefused(
                "rates of a card must be at most 100: more",
                () -> section(Collections.nCopies(101, line(ENVELOPE, 300)).toArray(CardLine<?>[]::new)));
        assertRefused(
                "material must be a text that is not blank: \"\"",
                () -> new CardSection("", Samples.height(2), Optional.empty(), List.of(line(ENVELOPE, 300))));
    }

    @Test
    void whatCantBeALineIsRefused() {
        assertRefused("rate must be greater than 0: 0 lb/mi", () -> line(ENVELOPE, 0));
        assertRefused("rate must be greater than 0: 0 lb/mi", () -> openLoop(0, 10, setting(4, 30)));
        assertRefused("tolerance must be greater than 0: 0 %", () -> openLoop(420, 0, setting(4, 30)));
        assertRefused("tolerance must be below 100 %: 100 %", () -> openLoop(420, 100, setting(4, 30)));
        assertRefused("control settings of a chart must be one or more: none", () -> openLoop(420, 10));
        assertRefused(
                "discharge per revolution must be greater than 0: 0 lb/rev",
                () -> new OpenLoopLine<>(
                        Measured.once(Amounts.of(0, SpreadingUnits.POUND_PER_REVOLUTION)),
                        List.of(setting(4, 30)),
                        RateBasis.perDistance(),
                        rate(420),
                        Amounts.of(10, SpreadingUnits.PERCENT)));
        assertRefused(
                "highest road speed must be at least 30 mi/h: 20 mi/h",
                () -> new HeldSpeeds(Optional.of(speed(30)), speed(20)));
        assertRefused(
                "highest road speed must be greater than 0: 0 mi/h", () -> new HeldSpeeds(Optional.empty(), speed(0)));
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        OpenLoopLine<ApplicationRate> openLoop = openLoop(420, 10, setting(4, 30));

        Samples.assertNamesWhatIsMissing(card(Optional.empty()));
        Samples.assertNamesWhatIsMissing(section(openLoop));
        Samples.assertNamesWhatIsMissing(line(ENVELOPE, 300));
        Samples.assertNamesWhatIsMissing(openLoop);
        Samples.assertNamesWhatIsMissing(openLoop.atSettings().get(0));
        Samples.assertNamesWhatIsMissing(line(ENVELOPE, 300).held().orElseThrow());
    }
}
