package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/** The tests tagged "locale" run again under other languages; this one makes sure that they really do. */
@Tag("locale")
class DefaultLocaleTest {

    @Test
    @EnabledIfSystemProperty(named = "expected.language", matches = ".+")
    void theVirtualMachineSpeaksTheExpectedLanguage() {
        assertThat(Locale.getDefault().getLanguage()).isEqualTo(System.getProperty("expected.language"));
    }
}
