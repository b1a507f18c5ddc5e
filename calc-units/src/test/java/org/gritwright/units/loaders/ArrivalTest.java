package org.gritwright.units.loaders;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;
import org.gritwright.units.Conversion;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is shipped to a fresh virtual machine arrives, though reading it is the first thing that is done there. */
class ArrivalTest {
    private Jvm jvm;

    @BeforeEach
    void freshFolder(@TempDir Path folder) {
        jvm = new Jvm(folder);
    }

    private static Crate crate() {
        List<Unit<?>> units = new ArrayList<>();
        UnitSymbol.all().forEach(row -> units.add(row.unit()));
        return new Crate(
                quantities(),
                units,
                Conversion.between(SpreadingUnits.POUND_PER_MILE, SpreadingUnits.KILOGRAM_PER_KILOMETER),
                refusal());
    }

    private static List<Quantity<?>> quantities() {
        List<Quantity<?>> quantities = new ArrayList<>();
        UnitSymbol.all().forEach(row -> quantities.add(Amounts.parseAny("12.7" + row.symbol())));
        UnitSymbol.all().forEach(row -> quantities.add(Amounts.parseAny("3" + row.symbol())));
        return quantities;
    }

    private static InvalidInputException refusal() {
        try {
            Quantity<Length> width = Amounts.of(1, SpreadingUnits.INCH);
            Require.atLeast("width", Length.class, width, Amounts.of(2, SpreadingUnits.INCH));
            throw new AssertionError("1 in is not refused");
        } catch (InvalidInputException e) {
            return e;
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"common-pool@program", "first@none", "first@home"})
    void anApplicationsOwnClassArrivesInALoaderBelowTheContext(String thread) throws Exception {
        jvm.ship(crate(), Arrival.FILE);
        assertThat(jvm.nested(Arrival.class.getName() + "@" + thread)).containsExactly(Arrival.print(crate()));
    }

    @Test
    void anApplicationsOwnClassArrivesBesideModules() throws Exception {
        jvm.ship(crate(), Arrival.FILE);
        assertThat(jvm.onModulePath(Arrival.class.getName() + "@first@platform"))
                .containsExactly(Arrival.print(crate()));
    }

    @Test
    void quantitiesArriveAloneOnceTheApplicationHasPrepared() throws Exception {
        ArrayList<Quantity<?>> sent = new ArrayList<>(quantities());
        jvm.ship(sent, ArrivalOfQuantities.FILE);
        assertThat(jvm.onClassPath(ArrivalOfQuantities.class.getName() + "@first@platform"))
                .containsExactly(
                        String.join(", ", sent.stream().map(Amounts::format).toList()));
    }
}
