package org.gritwright.core.json;

import org.jspecify.annotations.Nullable;

/**
 * A place in a document: a chain of steps that becomes a JSON pointer (RFC 6901) only when a problem is reported there.
 *
 * @param parent the place one step up; {@code null} for the document as a whole
 * @param name the name of the field or the index of the item
 */
public record Pointer(@Nullable Pointer parent, Object name) {
    public static final Pointer ROOT = new Pointer(null, "");

    public Pointer at(String field) {
        return new Pointer(this, field);
    }

    public Pointer at(int index) {
        return new Pointer(this, index);
    }

    /** The pointer's text; "~" and "/" in names are escaped (RFC 6901, section 3). */
    @Override
    public String toString() {
        return parent == null
                ? ""
                : parent + "/" + name.toString().replace("~", "~0").replace("/", "~1");
    }
}
