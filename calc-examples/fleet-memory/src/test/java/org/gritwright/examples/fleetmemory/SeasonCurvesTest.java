package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import javax.measure.quantity.Length;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Curves of many seasons: which line stands for which, and that nothing is drawn that wasn't fitted. */
class SeasonCurvesTest {
    private static Overview fleet;
    private static SeasonCurves curves;

    @BeforeAll
    static void make(@TempDir Path folder) throws Exception {
        fleet = OddSeasons.overview(folder);
        curves = curves(fleet);
    }

    private static SeasonCurves curves(Overview fleet) {
        List<PointStory> stories = fleet.drifts().points().stream()
                .filter(one -> one.history().truck().equals(OddSeasons.LONG))
                .map(one -> PointStory.of(fleet.history(), fleet.drifts(), one, fleet.at()))
                .toList();
        return SeasonCurves.of(fleet, stories).get(0);
    }

    private static SeasonCurves.Curve season(int year) {
        return curves.seasons().stream()
                .filter(one -> one.season().startsWith("from " + year))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aSeasonsLineIsTheCurveOfItsRecordAndGoesNoFartherThanItsCatches() {
        CurveFit fit = season(2025).fit().orElseThrow();
        DischargeCurve curve = fit.curve();
        double opening = Amounts.si(Length.class, Amounts.of(3, SpreadingUnits.INCH));
        assertThat(fit.at(opening))
                .isCloseTo(
                        curve.predict(curve.lowestCaught().withSi(opening))
                                .dischargePerRevolution()
                                .value()
                                .to(SpreadingUnits.POUND_PER_REVOLUTION)
                                .getValue()
                                .doubleValue(),
                        withinPercentage(1e-10));
        assertThat(fit.day()).isEqualTo(LocalDate.of(2025, 10, 14));
        assertThat(fit.openings().first()).isEqualTo(curve.lowestCaught().si());
        assertThat(fit.openings().last()).isEqualTo(curve.highestCaught().si());
        assertThat(fit.openings()).contains(curve.settings().get(1).si());
        assertThat(fit.holds(curve.highestCaught().si() * 1.001)).isFalse();
        CurveFit.Band band = fit.band(opening);
        assertThat(band.low()).isLessThan(band.value());
        assertThat(band.high() - band.value()).isBetween(0.001 * band.value(), 0.03 * band.value());
    }

    @Test
    void aSeasonWithoutACalibrationHasMarksAndNoLine() {
        assertThat(curves.seasons()).hasSize(OddSeasons.SEASONS);
        assertThat(season(OddSeasons.NOT_CALIBRATED).fit()).isEmpty();
        assertThat(season(OddSeasons.NOT_CALIBRATED).byOpening()).hasSize(3);
        assertThat(curves.seasons().stream().flatMap(one -> one.fit().stream())).hasSize(OddSeasons.SEASONS - 1);
    }

    @Test
    void aCurveThatNobodyEnteredDoesNotTakeThePlaceOfOneThatWas() {
        CurveFit fit = season(2024).fit().orElseThrow();
        assertThat(fit.day()).isEqualTo(LocalDate.of(2024, 10, 14));
        assertThat(fit.isEntered()).isTrue();
        Overview then = Overview.of(fleet.history(), fleet.tolerance(), 1, List.of(), LocalDate.of(2018, 10, 14))
                .with(fleet.curves());
        assertThat(curves(then).seasons())
                .hasSize(1)
                .allSatisfy(
                        one -> assertThat(one.fit().orElseThrow().isEntered()).isTrue());
    }

    @Test
    void theFirstCurveIsWhatAllIsComparedWith() {
        double opening = curves.openings().firstKey();
        CurveFit first = season(2018).fit().orElseThrow();
        assertThat(curves.reference(opening)).contains(first.at(opening));
        assertThat(curves.reference()).isEqualTo("the first curve (season from 2018-11-01)");
        // Of seven years of a drift of 2 % a year.
        assertThat(curves.changed(season(2025), opening).orElseThrow()).isBetween(-16.0, -12.0);
        assertThat(curves(fleet.with(FittedCurves.NONE)).reference()).isEqualTo("the first catch at the opening");
    }

    @Test
    void theLastFourSeasonsHaveALineAndAMarkEachAndTheEarlierOnesAreQuiet() {
        CurvesPicture picture = new CurvesPicture(curves, Picture.Width.WIDE);
        List<String> looks =
                picture.drawn().shapes().stream().map(Drawing.Shape::look).toList();
        // Above and below: four earlier seasons, three of the last four, and the band below.
        assertThat(looks).filteredOn("thin"::equals).hasSize(8);
        assertThat(looks)
                .filteredOn(List.of("solid", "dashed", "dotted", "long")::contains)
                .hasSize(6);
        assertThat(looks).filteredOn("long"::equals).isEmpty();
        assertThat(looks).filteredOn("quiet"::equals).hasSize(4 * 3 * 2);
        assertThat(looks).filteredOn("mark"::equals).hasSize(4 * 3 * 2);
        assertThat(looks).filteredOn("band"::equals).hasSize(1);
        assertThat(picture.keys())
                .extracting(CurvesPicture.Key::words)
                .containsExactly(
                        "season from 2025-11-01, the first with the new salt shed and the second loader",
                        "season from 2024-11-01",
                        "season from 2023-11-01, no curve fitted",
                        "season from 2022-11-01",
                        "4 earlier seasons");
        assertThat(picture.keys())
                .extracting(key -> key.sample().description())
                .containsExactly(
                        "solid line with ●", "dashed line with ◆", "■", "dotted line with ▲", "thin line with •");
    }

    @Test
    void withoutFittedCurvesNoLineIsInvented() {
        CurvesPicture picture = new CurvesPicture(curves(fleet.with(FittedCurves.NONE)), Picture.Width.WIDE);
        assertThat(picture.drawn().shapes()).extracting(Drawing.Shape::look).containsOnly("mark", "quiet", "axis");
        assertThat(picture.caption()).startsWith("Marks: the season’s last catch at each opening. No line joins them");
        assertThat(new CurvesPicture(curves, Picture.Width.WIDE).caption())
                .startsWith("Lines: the curves that were fitted");
    }

    @Test
    void aTruckThatWasCaughtOnceHasAPage() throws Exception {
        assertThat(page(OddSeasons.ONCE))
                .contains("Caught at one opening only, 2 in: there is no curve over the opening to draw.");
        assertThat(page(OddSeasons.LONG))
                .contains(
                        "of 2025-10-14, in proportion to the geometry",
                        "none fitted",
                        "<span>season from 2023-11-01, no curve fitted</span>");
    }

    private static String page(String truck) throws Exception {
        return Fixtures.unmarked(
                Objects.requireNonNull(Pages.of(fleet, List.of()).get(PageNames.of("truck", truck))));
    }
}
