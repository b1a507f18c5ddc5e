package org.gritwright.core.fleet;

import java.util.Map;
import java.util.TreeSet;
import org.gritwright.core.calibration.Material;
import org.gritwright.core.verification.Tolerance;
import org.gritwright.core.weighing.Scale;
import org.gritwright.units.InvalidInputException;

/** What all trucks of a day share, by name. */
record Yard(FleetDay day, Tolerance tolerance, Map<String, Scale> scales, Map<String, Material> materials) {

    Scale scale(String id) {
        return known("scale", scales, id);
    }

    Material material(String name) {
        return known("material", materials, name);
    }

    private static <T> T known(String field, Map<String, T> all, String name) {
        T found = all.get(name);
        if (found == null) {
            throw new InvalidInputException(field, "one of " + new TreeSet<>(all.keySet()), "\"" + name + "\"");
        }
        return found;
    }
}
