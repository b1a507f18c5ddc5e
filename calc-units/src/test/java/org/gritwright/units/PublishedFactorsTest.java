package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Exact factors against the legal definitions (NIST Special Publication 811, 2008, Appendix B; NIST Handbook 44,
 * Appendix C; UCUM), row by row of published-factors.csv.
 */
class PublishedFactorsTest {

    static Stream<PublishedFactors.Row> direct() {
        return PublishedFactors.all().stream().filter(PublishedFactors.Row::isDirect);
    }

    static Stream<PublishedFactors.Row> derived() {
        return PublishedFactors.all().stream().filter(row -> row.coveredBy().equals("derived"));
    }

    static Stream<PublishedFactors.Row> remembered() {
        return PublishedFactors.all().stream().filter(row -> !row.remembered().isEmpty());
    }

    @Test
    void noRowIsDroppedInSilence() {
        assertThat(PublishedFactors.all()).hasSizeGreaterThanOrEqualTo(79);
        assertThat(direct()).hasSizeGreaterThanOrEqualTo(54);
        assertThat(derived()).hasSizeGreaterThanOrEqualTo(16);
        assertThat(PublishedFactors.all().stream().filter(row -> row.coveredBy().equals("not covered")))
                .extracting(PublishedFactors.Row::unit)
                .containsExactly(
                        "foot (US survey)",
                        "mile (US survey)",
                        "intl foot / US survey foot",
                        "acre (US survey ft; SP 811 entry)",
                        "acre intl / acre survey",
                        "bushel (US)",
                        "grain",
                        "hundredweight short (100 lb)",
                        "pound per acre (survey)");
    }

    @ParameterizedTest
    @MethodSource("direct")
    void ourFactorIsThePublishedRational(PublishedFactors.Row row) {
        String[] units = row.coveredBy().split(" -> ", -1);
        ExactFactor ours = UnitPairs.between(units[0], units[1]).exactFactor();
        assertThat(Ulps.fraction(ours)).isEqualTo(Ulps.fraction(row.exact()));
    }

    @ParameterizedTest
    @MethodSource("derived")
    void arithmeticOnOurFactorsGivesTheDerivedRational(PublishedFactors.Row row) {
        assertThat(DERIVED.get(row.toString())).isEqualTo(Ulps.fraction(row.exact()));
    }

    @ParameterizedTest
    @MethodSource("remembered")
    void theExactRationalRoundsToTheRememberedFactor(PublishedFactors.Row row) {
        BigDecimal remembered = new BigDecimal(row.remembered());
        BigDecimal rounded = Ulps.fraction(row.exact())
                .bigDecimalValue(40, RoundingMode.HALF_EVEN)
                .round(new MathContext(remembered.precision(), RoundingMode.HALF_UP));
        assertThat(rounded).isEqualByComparingTo(remembered);
    }

    @Test
    void theDecimalColumnIsTheRationalToTwentyTwoDigits() {
        for (PublishedFactors.Row row : PublishedFactors.all()) {
            BigFraction exact = Ulps.fraction(row.exact());
            assertThat(new ExactFactor(exact.getNumerator(), exact.getDenominator()).toDecimal(22))
                    .as("%s", row)
                    .isEqualByComparingTo(row.decimal());
        }
    }

    private static BigFraction of(String from, String to) {
        return Ulps.fraction(UnitPairs.between(from, to).exactFactor());
    }

    private static final BigFraction SQUARE_METERS_PER_LANE_MILE =
            of("ft/lane", "m/lane").multiply(12).multiply(of("mi", "m"));

    /** g/m² from lb/lane-mi on a lane of so many feet. */
    private static BigFraction dosage(int feetPerLane) {
        return of("lb/lane-mi", "kg/lane-m")
                .divide(of("ft/lane", "m/lane").multiply(feetPerLane))
                .multiply(of("kg/m²", "g/m²"));
    }

    /** kg/(lane·m) from g/m² on a lane 3.5 m wide. */
    private static final BigFraction ON_A_3_5_M_LANE = of("g/m²", "kg/m²").multiply(BigFraction.of(7, 2));

    private static final Map<String, BigFraction> DERIVED = Map.ofEntries(
            Map.entry("square mile (international) in m2", of("mi", "m").pow(2)),
            Map.entry(
                    "liter per 100 km for 1 mile per US gallon in L/100km",
                    of("gal/mi", "L/km").multiply(100)),
            Map.entry("mile per US gallon in km/L", of("gal/mi", "L/km").reciprocal()),
            Map.entry(
                    "gallon US per 1000 ft2 in L/100m2",
                    of("gal/1000 ft²", "L/m²").multiply(100)),
            Map.entry("lane-mile (12 ft x 5280 ft) in m2", SQUARE_METERS_PER_LANE_MILE),
            Map.entry("lane-mile (12 ft) in acre", SQUARE_METERS_PER_LANE_MILE.divide(of("acre", "m²"))),
            Map.entry(
                    "lane-km (12 ft wide) in m2",
                    of("ft/lane", "m/lane").multiply(12).multiply(of("km", "m"))),
            Map.entry("1 lb per 12-ft lane-mile in g/m2", dosage(12)),
            Map.entry("1 lb per 11-ft lane-mile in g/m2", dosage(11)),
            Map.entry("1 g/m2 on a 12-ft lane in lb/lane-mile", dosage(12).reciprocal()),
            Map.entry("1 g/m2 on a 3.5-m lane in kg/lane-km", ON_A_3_5_M_LANE.divide(of("kg/lane-km", "kg/lane-m"))),
            Map.entry("1 g/m2 on a 3.5-m lane in lb/lane-mile", ON_A_3_5_M_LANE.divide(of("lb/lane-mi", "kg/lane-m"))),
            Map.entry(
                    "1 gal US per 12-ft lane-mile in mL/m2",
                    of("gal/lane-mi", "L/lane-km")
                            .divide(of("ft/lane", "m/lane").multiply(12))),
            Map.entry(
                    "MPH x lb/mile -> lb/min divisor in 1",
                    of("lb/min", "kg/s").divide(of("mi/h", "m/s").multiply(of("lb/mi", "kg/m")))),
            Map.entry(
                    "gpm for 1 gal/mile at 1 mph in gpm",
                    of("mi/h", "m/s").multiply(of("gal/mi", "L/m")).divide(of("gal/min", "L/s"))),
            Map.entry(
                    "lb/min for 1 kg/km at 1 km/h in lb/min",
                    of("km/h", "m/s").multiply(of("kg/km", "kg/m")).divide(of("lb/min", "kg/s"))));

    @Test
    void everyDerivationIsUsed() {
        assertThat(derived().map(PublishedFactors.Row::toString).toList())
                .containsExactlyInAnyOrderElementsOf(List.copyOf(DERIVED.keySet()));
    }
}
