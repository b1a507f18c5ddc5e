package org.gritwright.core.uncertainty;

import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;

/**
 * What a component of a budget is known by, whatever it is called in print: a code for the source of uncertainty and, where a
 * budget may hold several of one source, what it is about, as the span of one scale or another. Budgets of your own may use
 * any codes. Immutable, thread-safe, a value.
 *
 * @param code the source, for example "scale-span"; not blank
 * @param subject what it is about, for example a scale's id; none where the code says all
 */
public record ComponentKey(String code, Optional<String> subject) implements Serializable {
    /**
     * Checks the texts.
     *
     * @throws org.gritwright.units.InvalidInputException if one is blank
     */
    public ComponentKey {
        Require.text("key of an uncertainty", code);
        Objects.requireNonNull(subject, "subject");
        subject.ifPresent(about -> Require.text("subject of " + code, about));
    }

    /**
     * A key without a subject.
     *
     * @param code the source
     * @return the key
     * @throws org.gritwright.units.InvalidInputException if it is blank
     */
    public static ComponentKey of(String code) {
        return new ComponentKey(code, Optional.empty());
    }

    /**
     * A key with a subject.
     *
     * @param code the source
     * @param subject what it is about
     * @return the key
     * @throws org.gritwright.units.InvalidInputException if one is blank
     */
    public static ComponentKey of(String code, String subject) {
        return new ComponentKey(code, Optional.of(Objects.requireNonNull(subject, "subject")));
    }

    private Object writeReplace() {
        return SerialForm.of(this);
    }
    /**
     * The key as text.
     *
     * @return for example "scale-span of S-1"
     */
    @Override
    public String toString() {
        return subject.map(about -> code + " of " + about).orElse(code);
    }
}
