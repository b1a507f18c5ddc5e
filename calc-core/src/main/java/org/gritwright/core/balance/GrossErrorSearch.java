package org.gritwright.core.balance;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.gritwright.units.check.Require;

/**
 * Gross errors, looked for one by one: the one that explains most is let in if it is beyond chance, then all are looked at again. Nothing
 * is removed silently: each step says what was found, how sure, and what would explain the same. Immutable, thread-safe.
 */
public final class GrossErrorSearch {
    private final Power power;
    private final List<Step> steps;
    private final Adjustment before;
    private final Adjustment after;

    /**
     * One gross error that was found. Immutable, thread-safe, a value.
     *
     * @param suspect where and how large
     * @param risk the chance that the largest of all candidates' scores is like this without any gross error; at most that
     * @param same candidates that leave the very same trace: no data of this network tells them apart
     * @param alike others whose trace is so alike that they may be meant, the most alike in front
     * @param before whether all added up before this error was let in
     * @param after and with it
     */
    public record Step(
            Suspect suspect,
            double risk,
            List<Candidate> same,
            List<Likeness> alike,
            GlobalTest before,
            GlobalTest after)
            implements Serializable {
        private static final long serialVersionUID = 1L;

        /** Copies the lists. */
        public Step {
            Require.given(Step.class, suspect, same, alike, before, after);
            same = List.copyOf(same);
            alike = List.copyOf(alike);
        }
    }

    private GrossErrorSearch(Power power, List<Step> steps, Adjustment before, Adjustment after) {
        this.power = power;
        this.steps = List.copyOf(steps);
        this.before = before;
        this.after = after;
    }

    /**
     * Looks for gross errors.
     *
     * @param adjustment what doesn't add up, perhaps
     * @param candidates where to look; those that can't be told apart count as one
     * @param risk of finding any where there is none; greater than 0 and below 0.95
     * @param most how many to find at most
     * @param likeness from which correlation, without its sign, others are told as alike
     * @return what was found
     * @throws org.gritwright.units.InvalidInputException if the network has no such place, or a number isn't accepted
     */
    public static GrossErrorSearch of(
            Adjustment adjustment, Collection<Candidate> candidates, double risk, int most, double likeness) {
        Objects.requireNonNull(adjustment, "adjustment");
        Require.that(most >= 0, "gross errors to find", "0 or more", most);
        List<List<Candidate>> groups = adjustment.toldApart(candidates);
        Power power = Power.common(risk, Math.max(1, groups.size()));
        double critical = power.critical();
        List<Step> steps = new ArrayList<>();
        Adjustment now = adjustment;
        while (steps.size() < most) {
            Optional<Suspect> first = now.suspects(candidates).stream().findFirst();
            if (first.isEmpty() || Math.abs(first.get().score()) <= critical) {
                break;
            }
            Suspect suspect = first.get();
            List<Likeness> near = now.alike(suspect.candidate(), candidates, likeness);
            Adjustment next = now.letting(suspect.candidate());
            steps.add(new Step(
                    suspect,
                    power.riskOfScore(suspect.score()),
                    near.stream()
                            .filter(Likeness::isSame)
                            .map(Likeness::candidate)
                            .toList(),
                    near.stream().filter(one -> !one.isSame()).toList(),
                    now.test(),
                    next.test()));
            now = next;
        }
        return new GrossErrorSearch(power, steps, adjustment, now);
    }

    /**
     * What counted as found, and what would have been.
     *
     * @return risk, number of candidates that can be told apart, and the limits that follow
     */
    public Power power() {
        return power;
    }

    /**
     * What was found, in the order in which it was.
     *
     * @return the steps; none if nothing is beyond chance
     */
    public List<Step> steps() {
        return steps;
    }

    /**
     * The adjustment as it was.
     *
     * @return without any gross error
     */
    public Adjustment before() {
        return before;
    }

    /**
     * The adjustment in which all that was found is let in.
     *
     * @return the same as before if nothing was found
     */
    public Adjustment after() {
        return after;
    }
}
