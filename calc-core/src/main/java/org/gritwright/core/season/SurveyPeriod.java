package org.gritwright.core.season;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import org.gritwright.units.check.Require;

/**
 * The time between one survey of a pile and the next. The opening counts as a survey, and the last one is the closing. Immutable,
 * thread-safe, a value.
 *
 * @param number 1 from the opening to the next survey, and so on
 * @param of how many periods the pile has, 1 or more
 * @param days the days of the surveys before and after it; empty where they aren't known
 */
public record SurveyPeriod(int number, int of, List<LocalDate> days) implements Serializable {
    private static final long serialVersionUID = 1L;

    private static final int BOTH = 2;

    /**
     * Copies the list.
     *
     * @throws org.gritwright.units.InvalidInputException if there is no such period, or there is one day or more than two
     */
    public SurveyPeriod {
        Require.given(SurveyPeriod.class, days);
        days = List.copyOf(days);
        Require.that(number >= 1 && number <= of, "number of a period", "within 1 to " + of, number);
        Require.that(
                days.isEmpty() || days.size() == BOTH,
                "days of a period",
                "two, or none where they aren't known",
                days);
    }

    /**
     * Which period it is.
     *
     * @return for example "between the surveys of 2027-01-15 and 2027-02-20", "between the opening of 2026-11-01 and the survey of 2027-01-15",
     *     or "period 2" where no days are known; empty where the pile has no other
     */
    public String words() {
        if (of == 1) {
            return "";
        }
        if (days.isEmpty()) {
            return "period " + number;
        }
        if (number == 1) {
            return "between the opening of " + days.get(0) + " and the survey of " + days.get(1);
        }
        return number == of
                ? "between the survey of " + days.get(0) + " and the closing of " + days.get(1)
                : "between the surveys of " + days.get(0) + " and " + days.get(1);
    }
}
