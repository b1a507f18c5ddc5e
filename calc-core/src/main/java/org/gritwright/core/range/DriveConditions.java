package org.gritwright.core.range;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.finding.Term;
import org.gritwright.units.check.Require;

/**
 * Whether a drive was measured as it works. What takes oil or holds the conveyor back makes its range narrower, so that a
 * range measured without is too wide. That other functions need not be switched on comes before that: where measuring with
 * them isn't safe, say that they weren't running. Immutable, thread-safe, a value.
 *
 * @param loaded whether material lay on the conveyor
 * @param lowestEngineSpeed whether the engine ran at the lowest speed it works at
 * @param spinner whether the spinner ran
 * @param prewet whether the prewet pump ran
 * @param plow whether the plow was moved or held as at work
 */
public record DriveConditions(AtWork loaded, AtWork lowestEngineSpeed, AtWork spinner, AtWork prewet, AtWork plow)
        implements Serializable {
    /** Nobody says anything. */
    public static final DriveConditions NOT_SAID =
            new DriveConditions(AtWork.NOT_SAID, AtWork.NOT_SAID, AtWork.NOT_SAID, AtWork.NOT_SAID, AtWork.NOT_SAID);

    /** Everything was as at work. */
    public static final DriveConditions AS_AT_WORK =
            new DriveConditions(AtWork.YES, AtWork.YES, AtWork.YES, AtWork.YES, AtWork.YES);

    /** Checks that nothing is missing. */
    public DriveConditions {
        Require.given(DriveConditions.class, loaded, lowestEngineSpeed, spinner, prewet, plow);
    }

    /** What is so, or is not said. */
    List<Term> that(AtWork was) {
        List<Term> terms = new ArrayList<>();
        AtWork[] all = {loaded, lowestEngineSpeed, spinner, prewet, plow};
        Term[] names = {Term.LOAD, Term.LOWEST_ENGINE_SPEED, Term.SPINNER, Term.PREWET, Term.PLOW};
        for (int i = 0; i < all.length; i++) {
            if (all[i] == was) {
                terms.add(names[i]);
            }
        }
        return List.copyOf(terms);
    }
}
