package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.inches;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

class SpreaderLawsTest {
    private static double swept(double inches) {
        return CHAIN.sweptCubicMetersPerRevolution(Setting.of(inches(inches)));
    }

    @Property
    void aWiderOpeningSweepsMore(
            @ForAll @DoubleRange(min = 0.01, max = 19) double opening,
            @ForAll @DoubleRange(min = 0.01, max = 19) double more) {
        assertThat(swept(opening + more)).isGreaterThan(swept(opening));
    }

    @Property
    void aSlidingGatesVolumeIsProportionalToItsOpening(@ForAll @DoubleRange(min = 0.01, max = 39) double opening) {
        assertThat(swept(opening)).isCloseTo(swept(1) * opening, within(1e-12 * swept(opening)));
    }

    @Property
    void theUnitOfTheOpeningDoesNotMatter(@ForAll @DoubleRange(min = 0.01, max = 39) double opening) {
        double inMillimeters = CHAIN.sweptCubicMetersPerRevolution(Setting.of(
                Amounts.of(Amounts.in(inches(opening), SpreadingUnits.MILLIMETER), SpreadingUnits.MILLIMETER)));

        assertThat(inMillimeters).isCloseTo(swept(opening), within(1e-12 * swept(opening)));
    }
}
