package org.gritwright.core.json;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Where in its text everything in a document stands, in the order of the text: three numbers a value and nothing of the text
 * itself. Names are those of the tree, so that a place is found by its pointer even after the tree was changed.
 */
final class Places {
    /** The end of what isn't read to its end yet. */
    private static final int OPEN = Integer.MAX_VALUE;

    private static final int FIRST = 64;

    private int[] offsets = new int[FIRST];
    private int[] ends = new int[FIRST];
    private @Nullable String[] names = new String[FIRST];
    private int size;

    /**
     * A value begins.
     *
     * @param name the name of the field that it is in; {@code null} for an item of a list and the whole
     * @param offset where the name or else the value begins, in bytes
     * @return its number
     */
    int begin(@Nullable String name, long offset) {
        if (size == offsets.length) {
            int more = size + size / 2;
            offsets = Arrays.copyOf(offsets, more);
            ends = Arrays.copyOf(ends, more);
            names = Arrays.copyOf(names, more);
        }
        offsets[size] = (int) offset;
        ends[size] = OPEN;
        names[size] = name;
        size++;
        return size - 1;
    }

    /** A value ends. */
    void end(int number) {
        ends[number] = size;
    }

    /** Where the innermost value begins that isn't read to its end, or -1. */
    int lastOpen() {
        for (int i = size - 1; i >= 0; i--) {
            if (ends[i] == OPEN) {
                return offsets[i];
            }
        }
        return -1;
    }

    /** Where a place is in the text, or what it would be in if it were there; -1 if nothing was read. */
    int offset(Pointer pointer) {
        if (size == 0) {
            return -1;
        }
        int number = number(pointer);
        return offsets[number < 0 ? ~number : number];
    }

    /** The number of the value at a place, or of the last one on the way to it, inverted. */
    private int number(Pointer pointer) {
        if (pointer.parent() == null) {
            return 0;
        }
        int parent = number(pointer.parent());
        if (parent < 0) {
            return parent;
        }
        int end = Math.min(ends[parent], size);
        int item = 0;
        for (int child = parent + 1; child < end; child = ends[child]) {
            String name = names[child];
            if (name == null ? pointer.name().equals(item) : name.equals(pointer.name())) {
                return child;
            }
            item++;
        }
        return ~parent;
    }
}
