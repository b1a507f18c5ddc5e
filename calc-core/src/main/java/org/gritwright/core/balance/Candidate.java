package org.gritwright.core.balance;

import java.io.Serializable;
import java.util.Comparator;
import org.gritwright.units.check.Require;

/**
 * A place where a gross error can sit. Immutable, thread-safe, a value.
 *
 * @param kind what kind of place it is
 * @param name the name of the quantity, the shared error or the balance
 */
public record Candidate(Kind kind, String name) implements Serializable, Comparable<Candidate> {
    private static final long serialVersionUID = 1L;

    /** What kind of place it is; of places that explain the same the first is named first, as a leak blames no single measurement. */
    public enum Kind {
        /** A balance that leaks: its size is what its terms add up to beyond its constant. */
        BALANCE,
        /** A measurement that is biased: its size is what was read too much, in the quantity's unit. */
        MEASUREMENT,
        /** A shared error that is larger than stated: its size is the error, in its standard deviations. */
        SHARED_ERROR
    }

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the name is blank
     */
    public Candidate {
        Require.given(Candidate.class, kind, name);
        Require.text("name of a candidate", name);
    }

    /**
     * A biased measurement.
     *
     * @param quantity the quantity's name
     * @return the candidate
     */
    public static Candidate measurement(String quantity) {
        return new Candidate(Kind.MEASUREMENT, quantity);
    }

    /**
     * A shared error that is larger than stated.
     *
     * @param error the error's name
     * @return the candidate
     */
    public static Candidate sharedError(String error) {
        return new Candidate(Kind.SHARED_ERROR, error);
    }

    /**
     * A balance that leaks.
     *
     * @param balance the balance's name
     * @return the candidate
     */
    public static Candidate balance(String balance) {
        return new Candidate(Kind.BALANCE, balance);
    }

    /** By kind, then by name. */
    @Override
    public int compareTo(Candidate other) {
        return Comparator.comparing(Candidate::kind)
                .thenComparing(Candidate::name)
                .compare(this, other);
    }
}
