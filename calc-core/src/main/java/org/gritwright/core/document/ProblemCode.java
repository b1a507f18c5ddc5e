package org.gritwright.core.document;

import java.util.Locale;

/** What can be wrong with a document. The {@link #id} of a code never changes, whatever its words become. */
public enum ProblemCode {
    /** The text is not JSON, or not one JSON value. */
    NOT_JSON,
    /** The document is past one of the {@link DocumentLimits}. */
    TOO_LARGE,
    /** The document has another format than the one that is read. */
    WRONG_FORMAT,
    /** The document has a version that needs a newer library. */
    NEWER_VERSION,
    /** A field that must be there is missing. */
    MISSING_FIELD,
    /** A field that the format doesn't have. */
    UNKNOWN_FIELD,
    /** An object has two fields of the same name. */
    REPEATED_NAME,
    /** Two items of a list have the same name of their own, for example two trucks the same id. */
    REPEATED_ITEM,
    /** A JSON value of another type: a number in place of a text, an object in place of a list. */
    WRONG_TYPE,
    /** A text in another form, for example a date with its day first. */
    WRONG_FORM,
    /** A word that is not one of the fixed choice. */
    UNKNOWN_WORD,
    /** A value that can be read but not used, for example a mass below zero. */
    NOT_ACCEPTED;

    /**
     * The stable id of the code, fit to be stored or translated.
     *
     * @return for example "missing-field"
     */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
