package org.gritwright.examples.fleetmemory;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import picocli.CommandLine.TypeConversionException;

/** What somebody typed behind a command, or what is accepted there. */
final class Typed {
    private Typed() {}

    static LocalDate day(String text) {
        try {
            return LocalDate.parse(text.strip());
        } catch (DateTimeException e) {
            throw new TypeConversionException(
                    "\"" + text + "\" must be a day of the calendar as year-month-day, such as 2026-10-19");
        }
    }

    static ZoneOffset offset(String text) {
        try {
            return ZoneOffset.of(text.strip());
        } catch (DateTimeException e) {
            throw new TypeConversionException("\"" + text
                    + "\" must be hours and minutes ahead of UTC, such as -06:00 or +01:00, 18 hours at most");
        }
    }

    static double number(String text) {
        try {
            return Double.parseDouble(text.strip());
        } catch (NumberFormatException e) {
            throw new TypeConversionException("\"" + text + "\" must be a number alone, such as 4 or 2.5");
        }
    }

    static Path path(String text) {
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            throw new TypeConversionException(
                    "\"" + text + "\" can't be the name of a file here; if it has letters beyond"
                            + " A to Z, this terminal's character set must be UTF-8 (such as LC_ALL=C.UTF-8)");
        }
    }
}
