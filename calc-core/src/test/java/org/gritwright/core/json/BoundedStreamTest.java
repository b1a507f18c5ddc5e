package org.gritwright.core.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import org.junit.jupiter.api.Test;

class BoundedStreamTest {

    private static InputStream bounded(int bytes, int limit) {
        return new BoundedStream(new ByteArrayInputStream(new byte[bytes]), limit);
    }

    @Test
    void givesAllBytesUpToTheLimit() throws IOException {
        assertThat(bounded(5, 5).readAllBytes()).hasSize(5);
        InputStream oneByOne = bounded(2, 2);
        assertThat(new int[] {oneByOne.read(), oneByOne.read(), oneByOne.read()})
                .containsExactly(0, 0, -1);
    }

    @Test
    void refusesTheFirstByteBeyondIt() throws IOException {
        assertThatThrownBy(() -> bounded(6, 5).readAllBytes()).isInstanceOf(BoundedStream.TooLongException.class);
        InputStream oneByOne = bounded(2, 1);
        assertThat(oneByOne.read()).isZero();
        assertThatThrownBy(oneByOne::read).isInstanceOf(BoundedStream.TooLongException.class);
    }
}
