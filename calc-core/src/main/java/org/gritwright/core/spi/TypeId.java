package org.gritwright.core.spi;

import java.io.Serializable;
import java.util.regex.Pattern;
import org.gritwright.units.InvalidInputException;

/**
 * The stable name of a conveyor or gate type, with the version of its parameters and formula.
 *
 * <p>Built-in names are plain ("drag-chain"); others carry their owner's domain ("example.org/reciprocating-floor").
 *
 * @param name lower-case letters, digits, dots and hyphens, with at most one slash
 * @param version 1 or more; raised when parameters or formula change, so that old records keep their meaning
 */
public record TypeId(String name, int version) implements Comparable<TypeId>, Serializable {
    private static final long serialVersionUID = 1L;

    private static final Pattern NAME = Pattern.compile("[a-z0-9]+([.-][a-z0-9]+)*(/[a-z0-9]+([.-][a-z0-9]+)*)?");

    /**
     * Checks name and version.
     *
     * @throws InvalidInputException if the name has another form or the version is below 1
     */
    public TypeId {
        if (!NAME.matcher(name).matches()) {
            throw new InvalidInputException(
                    "type name", "lower-case letters, digits, dots, hyphens and one slash", "\"" + name + "\"");
        }
        if (version < 1) {
            throw new InvalidInputException("type version", "1 or more", String.valueOf(version));
        }
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
