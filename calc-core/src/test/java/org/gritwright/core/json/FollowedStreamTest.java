package org.gritwright.core.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class FollowedStreamTest {
    private static FollowedStream of(byte... bytes) {
        return new FollowedStream(new ByteArrayInputStream(bytes));
    }

    private static FollowedStream of(String text) {
        return of(text.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void itFollowsWhatIsReadByteByByteToo() throws IOException {
        FollowedStream text = of("\u0000a\nb");

        assertThat(new int[] {text.read(), text.read(), text.read(), text.read(), text.read()})
                .containsExactly(0, 'a', '\n', 'b', -1);
        assertThat(text.at(0)).isZero();
        assertThat(text.at(1)).isEqualTo((byte) 'a');
        assertThat(text.line(3)).isEqualTo(2);
        assertThat(text.column(3)).isEqualTo(1);
    }

    @Test
    void linesAreToldInAnyOrder() throws IOException {
        FollowedStream text = of("a\nb\r\nc\rd");
        text.readAllBytes();

        for (int twice = 0; twice < 2; twice++) {
            assertThat(new int[] {text.line(7), text.line(7), text.line(0), text.line(5), text.line(2), text.line(2)})
                    .containsExactly(4, 4, 1, 3, 2, 2);
        }
    }

    @Test
    void aColumnCountsCharacters() throws IOException {
        FollowedStream text = of("a\n\u00fc\u20acx");
        text.readAllBytes();

        assertThat(text.column(7)).isEqualTo(3);
    }

    @Test
    void onlyTheLastBytesAreKept() throws IOException {
        int kept = 1 << 15;
        byte[] bytes = new byte[kept + 10];
        Arrays.fill(bytes, (byte) 'a');
        bytes[10] = 'b';
        FollowedStream text = of(bytes);
        text.readAllBytes();

        assertThat(text.at(9)).isZero();
        assertThat(text.at(10)).isEqualTo((byte) 'b');
        assertThat(text.at(kept + 9)).isEqualTo((byte) 'a');
        assertThat(text.at(kept + 10)).isZero();
        assertThat(text.at(-1)).isZero();
    }

    @Test
    void theFirstByteIsKeptInAShortText() throws IOException {
        FollowedStream text = of("ab");
        text.readAllBytes();

        assertThat(text.at(0)).isEqualTo((byte) 'a');
        assertThat(text.at(1)).isEqualTo((byte) 'b');
        assertThat(text.at(2)).isZero();
    }
}
