package org.gritwright.core.finding;

import java.util.List;
import java.util.Locale;
import org.gritwright.units.check.Require;

/**
 * A place for an argument in a finding, as its code declares it. Immutable, thread-safe, a value.
 *
 * @param name the argument's name, which is also that of its place in the template
 * @param kind what the argument is
 * @param isList whether it is a list of those
 * @param terms which words of ours it can be, or be about; none where it has none
 */
public record Slot(String name, Argument.Kind kind, boolean isList, List<Term> terms) {
    /** Copies the list. */
    public Slot {
        Require.given(Slot.class, name, kind, terms);
        terms = List.copyOf(terms);
    }

    static final Slot SCALE = name("scale");
    static final Slot CONTAINER = name("container");
    static final Slot MATERIAL = name("material");
    static final Slot MODEL = term("model", Term.PROPORTIONAL, Term.DEAD_OPENING, Term.TABLE);
    static final Slot SLIPS = new Slot(
            "slips",
            Argument.Kind.SLIP,
            true,
            List.of(
                    Term.GATE_SETTING,
                    Term.PULSES_PER_REVOLUTION,
                    Term.GEAR_RATIO,
                    Term.PARAMETER,
                    Term.DENSITY,
                    Term.GROSS_MASS,
                    Term.CAUGHT_MASS,
                    Term.CAUGHT_VOLUME,
                    Term.PULSES_PER_VOLUME,
                    Term.TARE,
                    Term.REVOLUTIONS,
                    Term.TICKET,
                    Term.DISPLAYED_MASS,
                    Term.VALUE_IN_FORCE,
                    Term.VERIFICATION));
    static final Slot UNKNOWN = new Slot(
            "unknown",
            Argument.Kind.UNKNOWN,
            true,
            List.of(Term.SCATTER, Term.COUNT, Term.RUN_TIME, Term.SCALE_ACCURACY, Term.CONTAINER_TOLERANCE));

    static final Slot DIRECTION = term("direction", Term.RISING, Term.FALLING);
    static final Slot WORK = new Slot(
            "missing",
            Argument.Kind.TERM,
            true,
            List.of(Term.LOAD, Term.LOWEST_ENGINE_SPEED, Term.SPINNER, Term.PREWET, Term.PLOW));

    static Slot number(String name) {
        return new Slot(name, Argument.Kind.NUMBER, false, List.of());
    }

    static Slot date(String name) {
        return new Slot(name, Argument.Kind.DATE, false, List.of());
    }

    static Slot time(String name) {
        return new Slot(name, Argument.Kind.TIME, false, List.of());
    }

    static Slot name(String name) {
        return new Slot(name, Argument.Kind.NAME, false, List.of());
    }

    static Slot refusal(String name) {
        return new Slot(name, Argument.Kind.REFUSAL, false, List.of());
    }

    static Slot term(String name, Term... terms) {
        return new Slot(name, Argument.Kind.TERM, false, List.of(terms));
    }

    boolean accepts(Argument argument) {
        if (argument instanceof Argument.Prose) {
            return kind.wasProse();
        }
        return isList
                ? argument instanceof Argument.Several several
                        && several.items().stream().allMatch(this::acceptsOne)
                : acceptsOne(argument);
    }

    private boolean acceptsOne(Argument argument) {
        return kind.isKindOf(argument) && (terms.isEmpty() || terms.contains(termOf(argument)));
    }

    private static Term termOf(Argument argument) {
        if (argument instanceof Argument.Unknown unknown) {
            return unknown.what();
        }
        return argument instanceof Slip slip ? slip.part() : (Term) argument;
    }

    /**
     * Name and kind.
     *
     * @return for example "slips: list of slip"
     */
    @Override
    public String toString() {
        return name + ": " + (isList ? "list of " : "") + kind.name().toLowerCase(Locale.ROOT)
                + (terms.isEmpty() ? "" : terms.stream().map(Term::id).toList());
    }
}
