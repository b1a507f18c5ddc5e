package org.gritwright.core.json;

import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A place in a document: a chain of steps that becomes a JSON pointer (RFC 6901) only when a problem is reported there.
 *
 * @param parent the place one step up; {@code null} for the document as a whole
 * @param name the name of the field or the index of the item
 */
public record Pointer(@Nullable Pointer parent, Object name) {
    public static final Pointer ROOT = new Pointer(null, "");

    private static final Pattern INDEX = Pattern.compile("0|[1-9][0-9]{0,8}");

    /**
     * The place that a pointer's text names.
     *
     * @param text as of {@link #toString()}; what is a number is the index of an item
     */
    public static Pointer of(String text) {
        Pointer pointer = ROOT;
        List<String> steps = List.of(text.split("/", -1));
        // Before the first slash there is nothing.
        for (String step : steps.subList(1, steps.size())) {
            pointer = INDEX.matcher(step).matches()
                    ? pointer.at(Integer.parseInt(step))
                    : pointer.at(step.replace("~1", "/").replace("~0", "~"));
        }
        return pointer;
    }

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
