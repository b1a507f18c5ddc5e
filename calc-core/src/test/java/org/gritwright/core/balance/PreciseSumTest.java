package org.gritwright.core.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;

class PreciseSumTest {
    @Example
    void whatCancelsLeavesWhatIsSmall() {
        PreciseSum sum = new PreciseSum();
        sum.add(1e16);
        sum.add(1);
        sum.add(-1e16);
        assertThat(sum.value()).isEqualTo(1);

        PreciseSum product = new PreciseSum();
        double third = 1 / 3.0;
        product.addProduct(third, 3);
        product.add(-1);
        // One third as a double lacks 2⁻⁵⁴/3 of it.
        assertThat(product.value()).isEqualTo(-0x1p-54);
    }

    @Property
    void aSumOfProductsIsTheExactOneButForTwiceThePrecision(
            @ForAll @Size(max = 12) List<@DoubleRange(min = -1e9, max = 1e9) Double> numbers) {
        PreciseSum sum = new PreciseSum();
        BigDecimal exact = BigDecimal.ZERO;
        double size = 0;
        for (double number : numbers) {
            // Large ones come and go again; their squares stay.
            sum.add(number * 1e9);
            sum.addProduct(number, number / 7);
            sum.add(-number * 1e9);
            exact = exact.add(new BigDecimal(number).multiply(new BigDecimal(number / 7)));
            size += Math.abs(number) * 1e9;
        }

        assertThat(sum.value())
                .isCloseTo(exact.doubleValue(), within(Math.ulp(exact.doubleValue()) + 0x1p-98 * size + 1e-300));
    }
}
