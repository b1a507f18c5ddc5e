package org.gritwright.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.UncheckedIOException;

/** A value as it arrives elsewhere: serialized and read again. */
public final class Shipped {

    private Shipped() {}

    @SuppressWarnings("unchecked") // what is read is of the class that was written
    public static <T> T copyOf(T value) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(value);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return (T) in.readObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }

    /**
     * The laws of a value: it arrives as it was sent, equals one made alike and no other, hashes and prints alike, and
     * hashes otherwise than the other.
     */
    public static void assertIsAValue(Object value, Object madeAnew, Object other) {
        Object arrived = copyOf(value);
        assertThat(arrived).isNotSameAs(value).isEqualTo(value).hasSameHashCodeAs(value);
        assertThat(arrived).hasToString(value.toString());
        assertThat(madeAnew).isEqualTo(value).hasSameHashCodeAs(value);
        assertThat(other).isNotEqualTo(value).doesNotHaveSameHashCodeAs(value);
        assertThat(value).isNotEqualTo("a text").isNotEqualTo(null);
    }
}
