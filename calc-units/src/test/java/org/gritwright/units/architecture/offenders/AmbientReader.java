package org.gritwright.units.architecture.offenders;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Random;

/** Reads clock, chance and environment, on purpose. */
@SuppressWarnings("JavaTimeDefaultTimeZone")
public final class AmbientReader {
    private AmbientReader() {}

    static String read() {
        return "" + System.nanoTime()
                + System.currentTimeMillis()
                + System.getProperty("user.language")
                + System.getenv("LANG")
                + LocalDate.now()
                + Math.random()
                + new Random().nextInt()
                + Locale.getDefault()
                + Clock.systemUTC();
    }
}
