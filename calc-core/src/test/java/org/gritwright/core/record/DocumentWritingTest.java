package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.idle;

import java.io.ByteArrayOutputStream;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("jackson")
class DocumentWritingTest {
    @Test
    void whatCouldNotBeReadAgainIsNotWritten() {
        DocumentLimits few = new DocumentLimits(100_000, 16, 20, 1000, 100, 10, 1000);
        ByteArrayOutputStream out = new ByteArrayOutputStream();

        assertThatThrownBy(() -> Document.FLEET_DAY.write(day(idle("T-1")), out, few))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("document must be at most 20 values: ");
        assertThat(out.size()).isZero();
    }
}
