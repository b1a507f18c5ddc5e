package org.gritwright.core.spi;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.jspecify.annotations.Nullable;

/** What a registry asks a foreign type before it lets it in; level and id twice. */
final class TypeCheck {

    private TypeCheck() {}

    /**
     * Checks what a type says of itself.
     *
     * @return its id
     * @throws InvalidInputException if it can't be used; whatever else the type throws passes through
     */
    static TypeId check(SpreaderType type) {
        if (type == null) {
            throw new InvalidInputException("type", "given", "null");
        }
        // The level first: a type of a later level may not even have an id that this library understands.
        int level = type.spiLevel();
        Require.that(level >= 1 && level <= Spi.LEVEL, "SPI level", "one of this library's, 1 to " + Spi.LEVEL, level);
        int levelAgain = type.spiLevel();
        Require.that(levelAgain == level, "SPI level", "the same whenever asked", () -> level + " and " + levelAgain);
        TypeId id = type.id();
        TypeId idAgain = type.id();
        if (id == null || !id.equals(idAgain)) {
            throw new InvalidInputException("type id", "given, the same whenever asked", id + " and " + idAgain);
        }
        checkParameters(type.parameters());
        if (type instanceof ConveyorType conveyor) {
            checkConveyor(conveyor);
        } else if (type instanceof PumpType pump) {
            checkFill(pump.fillLimits());
        } else if (type instanceof FlowMeterType meter) {
            checkFill(meter.fillLimits());
        }
        return id;
    }

    /** A copy of what a type lists, if it is a list without gaps and not too long. */
    static List<Parameter<?>> bounded(List<Parameter<?>> declared) {
        if (declared == null) {
            throw new InvalidInputException("parameters", "a list without gaps", "null");
        }
        List<Parameter<?>> copy = Require.noMoreThan(Spi.MOST_PARAMETERS, "parameters", declared);
        Require.that(!copy.contains(null), "parameters", "a list without gaps", "a list with a null in it");
        return copy;
    }

    private static void checkParameters(List<Parameter<?>> parameters) {
        Set<String> names = new HashSet<>();
        for (Parameter<?> parameter : bounded(parameters)) {
            Require.that(
                    names.add(parameter.name()), "parameter", "declared once", () -> "\"" + parameter.name() + "\"");
        }
    }

    private static void checkFill(@Nullable FillLimits limits) {
        if (limits == null) {
            throw new InvalidInputException("fill limits", "given", "null");
        }
    }

    private static void checkConveyor(ConveyorType conveyor) {
        checkFill(conveyor.fillLimits());
        boolean metered = conveyor.meteredByGate();
        Require.that(
                conveyor.meteredByGate() == metered,
                "metered by a gate",
                "the same whenever asked",
                "once true, once false");
    }
}
