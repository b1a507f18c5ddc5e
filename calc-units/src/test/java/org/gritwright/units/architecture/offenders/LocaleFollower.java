package org.gritwright.units.architecture.offenders;

import java.text.NumberFormat;
import java.util.Locale;

/** Follows the default locale in six ways, on purpose, and is told one in two. */
@SuppressWarnings({"StringCaseLocaleUsage", "DefaultLocale"})
public final class LocaleFollower {
    private LocaleFollower() {}

    static String follow(String text) {
        return String.format("%s", text)
                + "%s".formatted(text)
                + text.toLowerCase()
                + text.toUpperCase()
                + NumberFormat.getInstance().format(1.5)
                + String.format(Locale.ROOT, "%s", text)
                + text.toLowerCase(Locale.ROOT);
    }
}
