package org.gritwright.core.fleet.assessment;

import java.time.LocalDate;
import java.util.Optional;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * One reason why a truck's day can't be computed with, with its place in the day's document. Immutable, thread-safe, a value.
 *
 * @param pointer where, as a JSON pointer (RFC 6901) into the document that the day is written as, for example
 *     "/trucks/3/verificationCatches/0/setting"
 * @param subject what it is about, for people, for example "catch of 08:40"; empty for the truck as a whole
 * @param field what the value is, in the trade's words
 * @param accepted what would be accepted, worded to follow "must be"
 * @param value the offending value with its unit
 * @param words a sentence that says it better than field, rule and value; none if they say it
 */
public record Refusal(
        String pointer, String subject, String field, String accepted, String value, Optional<String> words) {
    /** What was written down, or thrown, may be long; a person needs to recognize it. */
    private static final int LONGEST = 1000;

    /** Checks that all are given, and shortens what is longer than 1000 characters. */
    public Refusal {
        Require.given(Refusal.class, pointer, subject, field, accepted, value, words);
        field = shortened(field);
        accepted = shortened(accepted);
        value = shortened(value);
        words = words.map(Refusal::shortened);
    }

    /**
     * A refusal that field, rule and value say.
     *
     * @param pointer as of the record
     * @param subject as of the record
     * @param field as of the record
     * @param accepted as of the record
     * @param value as of the record
     */
    public Refusal(String pointer, String subject, String field, String accepted, String value) {
        this(pointer, subject, field, accepted, value, Optional.empty());
    }

    private static String shortened(String text) {
        return text.length() <= LONGEST ? text : text.substring(0, LONGEST - 1) + "…";
    }

    /** Also what nobody expected to be thrown is the trouble of one truck and not of the day. */
    static Refusal of(String pointer, String subject, RuntimeException thrown) {
        return thrown instanceof InvalidInputException refused
                ? new Refusal(pointer, subject, refused.field(), refused.accepted(), refused.value(), refused.words())
                : new Refusal(pointer, subject, "result", "one that can be computed", thrown.toString());
    }

    /**
     * The reason in one sentence.
     *
     * @return for example "catch of 08:40: gate setting must be within 0 m to 1 m: 50 in"
     */
    public String sentence() {
        return (subject.isEmpty() ? "" : subject + ": ")
                + words.orElseGet(() -> field + " must be " + accepted + ": " + value);
    }

    /**
     * Place and reason.
     *
     * @return for example "/trucks/3/verificationCatches/0/setting: catch of 08:40: gate setting must be within 0 m to
     *     1 m: 50 in"
     */
    @Override
    public String toString() {
        return pointer + ": " + sentence();
    }

    /** That of a date after the document's own day. */
    static Optional<Refusal> ofDateAfter(LocalDate day, LocalDate date, String pointer, String subject, String field) {
        String asked = date.getYear() == day.getYear() ? "" : " (is one of both years wrong?)";
        return date.isAfter(day)
                ? Optional.of(new Refusal(
                        pointer, subject, field, "not after the document's own day, " + day + asked, date.toString()))
                : Optional.empty();
    }
}
