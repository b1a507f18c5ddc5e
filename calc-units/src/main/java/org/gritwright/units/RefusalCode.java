package org.gritwright.units;

import java.util.Locale;

/**
 * Why an input was refused: the stable part of an {@link InvalidInputException}, for programs and for messages in other
 * languages.
 *
 * <p>Each constant says which arguments the exception carries; limits are written as {@link Amounts#format} or a bare
 * number writes them. A translation is a sentence for each code with field, value and arguments in it, and the field's
 * own name translated. The sentence for {@link #NOT_ACCEPTED} should show the English rule, since there is no other.
 * Later versions may add constants, so have a sentence for those that you don't know.
 */
public enum RefusalCode {
    /** A rule that no other code names; the English text is all there is. No arguments. */
    NOT_ACCEPTED,
    /** Something needed was not given, is empty, or is a text of blanks. No arguments. */
    MISSING,
    /** A text is not written as it has to be. Argument: the character at which reading stopped, from 1, where known. */
    MALFORMED,
    /** A number was needed and the text is none. Argument: the character at which reading stopped, from 1. */
    NOT_A_NUMBER,
    /** A number without the unit it needs. Arguments: the symbols that would do. */
    MISSING_UNIT,
    /** A unit that the symbol table doesn't have. Arguments: what was read, then symbols that may have been meant. */
    UNKNOWN_UNIT,
    /** The right kind of quantity in a unit that can't be used here. Argument: the unit that can, where it is one. */
    WRONG_UNIT,
    /** A unit or quantity of another kind than the one needed. Argument: the kind needed, see {@link UnitSymbol#kindName}. */
    WRONG_KIND,
    /** A name, id or choice that doesn't exist. Arguments: those that do, where they can be listed. */
    UNKNOWN_NAME,
    /** Given twice where once is the rule. No arguments. */
    REPEATED,
    /** NaN, infinite, or too large for a result. No arguments. */
    NOT_FINITE,
    /** Has to be greater than zero. No arguments. */
    NOT_POSITIVE,
    /** Has to be zero or more. No arguments. */
    NEGATIVE,
    /** Has to be a whole number. No arguments. */
    NOT_WHOLE,
    /** Below what is accepted, or too few. Argument: the lowest. */
    TOO_LOW,
    /** Above what is accepted, or too many. Argument: the highest. */
    TOO_HIGH,
    /** Outside two limits. Arguments: the lowest, the highest. */
    OUT_OF_RANGE,
    /** Good by itself, but not beside another input. Argument: the other input, where it is one. */
    INCONSISTENT,
    /**
     * A spreader type threw, or answered what can't be. What it threw is the exception's cause. Argument: the type's id, or its
     * class where even the id can't be had.
     */
    TYPE_FAILED;

    /**
     * The code's stable id.
     *
     * @return for example "out-of-range"
     */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
