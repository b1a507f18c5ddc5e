package org.gritwright.core.fleet.assessment;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WeighingEntry;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.observation.Material;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Entries like others in all but one thing. */
final class Written {
    private Written() {}

    static CatchEntry at(CatchEntry entry, LocalDate day, String time) {
        return new CatchEntry(
                OffsetDateTime.of(day, LocalTime.parse(time), ZoneOffset.ofHours(-5)),
                entry.operator(),
                entry.scale(),
                entry.containers(),
                entry.read(),
                entry.density(),
                entry.counted(),
                entry.setting(),
                entry.material(),
                entry.conditions(),
                entry.notes());
    }

    /** Gross and tare in turn, in pounds. */
    static CatchEntry weighed(CatchEntry entry, double... pairs) {
        List<WeighingEntry> containers = new ArrayList<>();
        for (int i = 0; i < pairs.length; i += 2) {
            containers.add(new WeighingEntry(
                    "tarp",
                    Amounts.of(pairs[i], SpreadingUnits.POUND),
                    Amounts.of(pairs[i + 1], SpreadingUnits.POUND)));
        }
        return new CatchEntry(
                entry.at(),
                entry.operator(),
                entry.scale(),
                containers,
                entry.read(),
                entry.density(),
                entry.counted(),
                entry.setting(),
                entry.material(),
                entry.conditions(),
                entry.notes());
    }

    static CatchEntry of(String material, CatchEntry entry) {
        return new CatchEntry(
                entry.at(),
                entry.operator(),
                entry.scale(),
                entry.containers(),
                entry.read(),
                entry.density(),
                entry.counted(),
                entry.setting(),
                material,
                entry.conditions(),
                entry.notes());
    }

    static CalibrationCatchEntry calibrates(CatchEntry entry) {
        return new CalibrationCatchEntry(entry, true, Coasting.IN_BOTH);
    }

    static VerificationCatchEntry verifies(CatchEntry entry, VerificationCatchEntry like) {
        return new VerificationCatchEntry(
                entry,
                like.inForce(),
                like.slot(),
                like.target(),
                like.testSpeed(),
                like.runTime(),
                like.testDistance(),
                like.indicated(),
                like.indicatedStep());
    }

    static VerificationCatchEntry bySlot(String slot, VerificationCatchEntry like) {
        return new VerificationCatchEntry(
                like.entry(),
                like.inForce(),
                Optional.of(slot),
                like.target(),
                like.testSpeed(),
                like.runTime(),
                like.testDistance(),
                like.indicated(),
                like.indicatedStep());
    }

    /** Over a course whose time nobody took. */
    static VerificationCatchEntry over(double miles, VerificationCatchEntry like) {
        return new VerificationCatchEntry(
                like.entry(),
                like.inForce(),
                like.slot(),
                like.target(),
                like.testSpeed(),
                Optional.empty(),
                Optional.of(Amounts.of(miles, SpreadingUnits.MILE)),
                like.indicated(),
                like.indicatedStep());
    }

    static InForceEntry inSlot(String slot, InForceEntry entry) {
        return inForce(entry, entry.material(), entry.setting(), Optional.of(slot));
    }

    static InForceEntry inForce(
            InForceEntry entry, String material, Optional<Quantity<?>> setting, Optional<String> slot) {
        return new InForceEntry(entry.value(), entry.displayStep(), entry.since(), material, setting, slot);
    }

    static FleetDay withMaterials(FleetDay day, Material... materials) {
        return new FleetDay(
                day.day(),
                day.seasonStart(),
                day.tolerance(),
                day.decisionRule(),
                day.allowances(),
                day.site(),
                day.technician(),
                day.scales(),
                day.graduates(),
                List.of(materials),
                day.plan(),
                day.routes(),
                day.trucks());
    }
}
