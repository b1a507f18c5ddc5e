package org.gritwright.core.spi;

import java.io.Serializable;
import java.util.regex.Pattern;
import org.gritwright.units.check.Require;

/**
 * The stable name of a conveyor or gate type, with the version of its parameters and formula.
 *
 * <p>Built-in names are plain ("drag-chain"); others carry their owner's domain ("example.org/reciprocating-floor").
 *
 * @param name lower-case letters, digits, dots and hyphens, with at most one slash; at most 200 characters
 * @param version 1 or more; raised when parameters or formula change, so that old records keep their meaning
 */
public record TypeId(String name, int version) implements Comparable<TypeId>, Serializable {
    private static final int LONGEST = 200;

    /** Possessive, so that it neither goes back nor deeper with every part. */
    private static final Pattern NAME =
            Pattern.compile("[a-z0-9]++(?:[.-][a-z0-9]++)*+(?:/[a-z0-9]++(?:[.-][a-z0-9]++)*+)?+");

    /**
     * Checks name and version.
     *
     * @throws org.gritwright.units.InvalidInputException if the name has another form or the version is below 1
     */
    public TypeId {
        Require.given(TypeId.class, name);
        Require.that(
                name.length() <= LONGEST,
                "type name",
                "at most " + LONGEST + " characters",
                () -> name.length() + " characters");
        Require.that(
                NAME.matcher(name).matches(),
                "type name",
                "lower-case letters, digits, dots, hyphens and one slash",
                () -> "\"" + name + "\"");
        Require.that(version >= 1, "type version", "1 or more", version);
    }

    /**
     * A type's id.
     *
     * @param name the name
     * @param version the version
     * @return the id
     */
    public static TypeId of(String name, int version) {
        return new TypeId(name, version);
    }

    @Override
    public int compareTo(TypeId other) {
        int byName = name.compareTo(other.name);
        return byName != 0 ? byName : Integer.compare(version, other.version);
    }

    /**
     * Name and version.
     *
     * @return for example "drag-chain, version 1"
     */
    @Override
    public String toString() {
        return name + ", version " + version;
    }
}
