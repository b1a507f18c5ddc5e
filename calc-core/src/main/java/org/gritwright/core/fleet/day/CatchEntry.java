package org.gritwright.core.fleet.day;

import static java.util.Optional.empty;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.observation.Conditions;
import org.gritwright.units.check.Require;

/**
 * What every catch has, of either purpose, as it was written down.
 *
 * @param at day and time of the catch
 * @param operator who was at the controls
 * @param scale the id of the scale; none where a liquid was read in a container with marks
 * @param containers the containers that were weighed, one or more; none where a liquid was read
 * @param read what was read in a container with marks; none where it was weighed
 * @param density the density of a liquid that was weighed; none for grains, and where a liquid was read
 * @param counted what was counted
 * @param setting where the gate stood; none for a spreader without a gate to set
 * @param material the name of the material
 * @param conditions what else was written down
 * @param notes remarks
 */
public record CatchEntry(
        OffsetDateTime at,
        Optional<String> operator,
        Optional<String> scale,
        List<WeighingEntry> containers,
        Optional<ReadEntry> read,
        Optional<DensityEntry> density,
        Optional<CountEntry> counted,
        Optional<Quantity<?>> setting,
        String material,
        Optional<Conditions> conditions,
        Optional<String> notes) {

    /** Copies the list. */
    public CatchEntry {
        Require.given(
                CatchEntry.class,
                at,
                operator,
                scale,
                containers,
                read,
                density,
                counted,
                setting,
                material,
                conditions,
                notes);
        containers = List.copyOf(containers);
    }

    /**
     * A catch of which only the weighing is written down; add the rest with the other methods.
     *
     * @param at day and time of the catch
     * @param material the name of the material
     * @param scale the id of the scale
     * @param containers the containers
     * @return the entry
     */
    public static CatchEntry of(OffsetDateTime at, String material, String scale, WeighingEntry... containers) {
        return new CatchEntry(
                at,
                empty(),
                Optional.of(Objects.requireNonNull(scale, "scale")),
                List.of(Objects.requireNonNull(containers, "containers")),
                empty(),
                empty(),
                empty(),
                empty(),
                material,
                empty(),
                empty());
    }

    /**
     * A catch of a liquid that was read; add the rest with the other methods.
     *
     * @param at day and time of the catch
     * @param material the name of the material
     * @param read what was read
     * @return the entry
     */
    public static CatchEntry read(OffsetDateTime at, String material, ReadEntry read) {
        return new CatchEntry(
                at,
                empty(),
                empty(),
                List.of(),
                Optional.of(Objects.requireNonNull(read, "read")),
                empty(),
                empty(),
                empty(),
                material,
                empty(),
                empty());
    }

    /**
     * The same catch, of a liquid that was weighed.
     *
     * @param measured the density of the liquid
     * @return the entry
     */
    public CatchEntry withDensity(DensityEntry measured) {
        return new CatchEntry(
                at,
                operator,
                scale,
                containers,
                read,
                Optional.of(measured),
                counted,
                setting,
                material,
                conditions,
                notes);
    }

    /**
     * The same catch with a count.
     *
     * @param count what was counted
     * @return the entry
     */
    public CatchEntry counted(CountEntry count) {
        return new CatchEntry(
                at,
                operator,
                scale,
                containers,
                read,
                density,
                Optional.of(count),
                setting,
                material,
                conditions,
                notes);
    }

    /**
     * The same catch at a setting.
     *
     * @param stood where the gate stood
     * @return the entry
     */
    public CatchEntry at(Quantity<?> stood) {
        return new CatchEntry(
                at,
                operator,
                scale,
                containers,
                read,
                density,
                counted,
                Optional.of(stood),
                material,
                conditions,
                notes);
    }

    /**
     * The same catch with its conditions.
     *
     * @param noted what else was written down
     * @return the entry
     */
    public CatchEntry under(Conditions noted) {
        return new CatchEntry(
                at, operator, scale, containers, read, density, counted, setting, material, Optional.of(noted), notes);
    }
}
