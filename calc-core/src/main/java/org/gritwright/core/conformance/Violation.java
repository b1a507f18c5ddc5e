package org.gritwright.core.conformance;

import org.gritwright.units.check.Require;

/**
 * A law that a type breaks, and how.
 *
 * @param law the law
 * @param how what was asked and what came back
 */
public record Violation(Law law, String how) {
    /** Checks that both are given. */
    public Violation {
        Require.given(Violation.class, law, how);
    }

    /**
     * Law and how, as a failing test prints it.
     *
     * @return for example "finite: NaN at 0.1, with {pitch=2 in}"
     */
    @Override
    public String toString() {
        return law.id() + ": " + how;
    }
}
