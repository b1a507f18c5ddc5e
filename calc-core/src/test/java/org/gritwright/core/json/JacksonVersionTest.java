package org.gritwright.core.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.json.PackageVersion;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("jackson")
class JacksonVersionTest {

    @Test
    void theBuildRunsTheRecordTestsWithTheJacksonItSays() {
        assertThat(PackageVersion.VERSION).hasToString(System.getProperty("expected.jackson.version"));
    }
}
