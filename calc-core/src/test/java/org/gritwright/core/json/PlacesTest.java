package org.gritwright.core.json;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PlacesTest {

    @Test
    void whereNothingWasReadNothingIs() {
        assertThat(new Places().offset(Pointer.of("/a"))).isEqualTo(-1);
        assertThat(new Places().lastOpen()).isEqualTo(-1);
    }

    @Test
    void whatIsReadToItsEndIsNotOpen() {
        Places places = new Places();
        int whole = places.begin(null, 3);
        int part = places.begin("a", 4);

        assertThat(places.lastOpen()).isEqualTo(4);
        places.end(part);
        assertThat(places.lastOpen()).isEqualTo(3);
        places.end(whole);
        assertThat(places.lastOpen()).isEqualTo(-1);
    }

    /** {"a": {"c": 1}}. */
    @Test
    void whatIsMissingBelowWhatIsMissingWouldBeInWhatIsThere() {
        Places places = new Places();
        int whole = places.begin(null, 0);
        int a = places.begin("a", 1);
        int c = places.begin("c", 7);
        places.end(c);
        places.end(a);
        places.end(whole);

        assertThat(places.offset(Pointer.of("/a/c"))).isEqualTo(7);
        assertThat(places.offset(Pointer.of("/a/b"))).isEqualTo(1);
        assertThat(places.offset(Pointer.of("/a/b/c"))).isEqualTo(1);
    }
}
