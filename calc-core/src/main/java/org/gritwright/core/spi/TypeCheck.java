package org.gritwright.core.spi;

import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.gritwright.units.InvalidInputException;

/** What a registry asks a foreign type, twice, before it lets it in. */
final class TypeCheck {

    private TypeCheck() {}

    /**
     * Checks what a type says of itself.
     *
     * @return its id
     * @throws InvalidInputException if it can't be used; whatever else the type throws passes through
     */
    static TypeId check(SpreaderType type) {
        // The level first: a type of a later level may not even have an id that this library understands.
        int level = type.spiLevel();
        if (level < 1 || level > Spi.LEVEL || level != type.spiLevel()) {
            throw new InvalidInputException(
                    "SPI level", "from 1 to " + Spi.LEVEL + ", the same whenever asked", String.valueOf(level));
        }
        TypeId id = type.id();
        if (id == null || !id.equals(type.id())) {
            throw new InvalidInputException("type id", "given, the same whenever asked", String.valueOf(id));
        }
        checkParameters(type.parameters());
        if (type instanceof ConveyorType conveyor && conveyor.fillLimits() == null) {
            throw new InvalidInputException("fill limits", "given", "null");
        }
        return id;
    }

    private static void checkParameters(List<Parameter<?>> parameters) {
        if (parameters == null || parameters.stream().anyMatch(Objects::isNull)) {
            throw new InvalidInputException("parameters", "a list without gaps", String.valueOf(parameters));
        }
        Set<String> names = new HashSet<>();
        for (Parameter<?> parameter : parameters) {
            if (!names.add(parameter.name())) {
                throw new InvalidInputException("parameter", "declared once", "\"" + parameter.name() + "\"");
            }
        }
    }
}
