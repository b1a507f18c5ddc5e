package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.Serializable;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import org.junit.jupiter.api.Test;

/** What a data engine ships to its workers arrives as it was. */
class SerializationTest {

    private static Object shipped(Object object) throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(object);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return in.readObject();
        }
    }

    @Test
    void everyConversionConvertsTheSameAfterwards() throws Exception {
        for (UnitPairs.Pair pair : UnitPairs.ALL) {
            Conversion arrived = (Conversion) shipped(pair.conversion());
            assertThat(arrived).isEqualTo(pair.conversion()).hasSameHashCodeAs(pair.conversion());
            assertThat(arrived).hasToString(pair.conversion().toString());
            assertThat(arrived.exactFactor()).isEqualTo(pair.conversion().exactFactor());
            assertThat(arrived.convert(12.7)).isEqualTo(pair.conversion().convert(12.7));
        }
    }

    @Test
    void aQuantityInEveryUnitIsPrintedTheSameAfterwards() throws Exception {
        for (UnitSymbol<?> row : UnitSymbol.all()) {
            Quantity<?> sent = Amounts.parseAny("12.7" + row.symbol());
            Quantity<?> arrived = (Quantity<?>) shipped((Serializable) sent);
            assertThat(Amounts.format(arrived)).isEqualTo(Amounts.format(sent));
        }
    }

    @Test
    @SuppressWarnings("unchecked") // the kind of a unit doesn't matter here
    void everyUnitAndQuantityArrivesEqualAndIsFoundInTheTable() throws Exception {
        for (UnitSymbol<?> row : UnitSymbol.all()) {
            Unit<Mass> unit = (Unit<Mass>) shipped((Serializable) row.unit());
            assertThat(unit).as(row.symbol()).isEqualTo(row.unit()).hasSameHashCodeAs(row.unit());
            assertThat(UnitSymbol.of(unit)).isSameAs(row);
            for (String number : List.of("12.7", "3", "-0.001", "1e300")) {
                Quantity<?> sent = Amounts.parseAny(number + row.symbol());
                assertThat(shipped((Serializable) sent)).isEqualTo(sent).hasSameHashCodeAs(sent);
            }
        }
    }

    @Test
    void anErrorKeepsItsParts() throws Exception {
        InvalidInputException arrived = (InvalidInputException)
                shipped(new InvalidInputException(RefusalCode.TOO_LOW, "load", "at least 20 lb", "5 lb", "20 lb"));
        assertThat(arrived).hasMessage("load must be at least 20 lb: 5 lb");
        assertThat(arrived.code()).isEqualTo(RefusalCode.TOO_LOW);
        assertThat(arrived.field()).isEqualTo("load");
        assertThat(arrived.accepted()).isEqualTo("at least 20 lb");
        assertThat(arrived.value()).isEqualTo("5 lb");
        assertThat(arrived.arguments()).containsExactly("20 lb");
    }
}
