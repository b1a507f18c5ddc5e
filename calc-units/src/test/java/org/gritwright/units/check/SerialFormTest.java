package org.gritwright.units.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.Serializable;
import java.util.Optional;
import java.util.OptionalDouble;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;

class SerialFormTest {
    /** What optional components there are; 13 is refused as soon as {@link #unlucky} says so. */
    public record Ticket(int number, String holder, Optional<String> note, OptionalDouble price)
            implements Serializable {
        private static boolean unlucky;

        public Ticket {
            Require.that(!unlucky || number != 13, "number", "any but 13", number);
        }

        private Object writeReplace() {
            return SerialForm.of(this);
        }
    }

    private static byte[] written(Object object) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(object);
        }
        return bytes.toByteArray();
    }

    private static Object read(byte[] bytes) throws IOException, ClassNotFoundException {
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes))) {
            return in.readObject();
        }
    }

    @Test
    void aRecordComesBackAsItWas() throws IOException, ClassNotFoundException {
        Ticket full = new Ticket(7, "Ann", Optional.of("window"), OptionalDouble.of(2.5));
        Ticket bare = new Ticket(8, "Bob", Optional.empty(), OptionalDouble.empty());

        assertThat(read(written(full))).isEqualTo(full);
        assertThat(read(written(bare))).isEqualTo(bare);
    }

    @Test
    void whatTheConstructorRefusesIsNotReadEither() throws IOException {
        byte[] bytes = written(new Ticket(13, "Eve", Optional.empty(), OptionalDouble.empty()));
        Ticket.unlucky = true;
        try {
            assertThatExceptionOfType(InvalidObjectException.class)
                    .isThrownBy(() -> read(bytes))
                    .withMessageEndingWith("can't be made")
                    .withRootCauseInstanceOf(InvalidInputException.class);
        } finally {
            Ticket.unlucky = false;
        }
    }
}
