package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;

/** Where a mechanic looks first, by what the findings say is off (common practice, no source). */
final class Causes {
    private static final String SLIPPED = "a gate that slipped or was read wrong";
    private static final String BRIDGING = "material bridging over the conveyor";
    private static final String EMPTY = "a nearly empty hopper";
    private static final String OIL = "cold oil";
    private static final String CONTAINER = "a pail that wasn’t emptied, or was weighed twice";
    private static final String SLOT = "the wrong material or slot in the display";
    private static final String WEAR = "a slack or worn conveyor";
    private static final String VALVE = "a slow or limited valve or pump";
    private static final String SHAFT = "pulses counted on another shaft";
    private static final String AIR = "air in the line, or a leak on the suction side";
    private static final String STRAINER = "a clogged strainer or hose";
    private static final String WORN_PUMP = "a worn pump, or a relief valve that bypasses";
    private static final String K_FACTOR = "a K factor of another meter, or per liter instead of per gallon";
    private static final String NOT_EMPTIED = "a container that wasn’t emptied, or foam in it";
    private static final String TANK = "a nearly empty tank";
    private static final String OTHER_LIQUID = "another liquid, or a hydrometer read warm";
    private static final String CHECK_VALVE = "a check valve that lets the line run out";
    private static final String LITERS = "liters written as gallons";

    private Causes() {}

    /** Nothing where no finding has a cause on the truck; what the conditions written down point to stands first. */
    static Optional<String> sentence(List<Finding> findings, boolean isLiquid) {
        Set<String> causes = new LinkedHashSet<>();
        List<FindingCode> codes = findings.stream().map(Finding::code).toList();
        for (FindingCode code : codes) {
            causes.addAll(isLiquid ? ofLiquid(code) : of(code));
        }
        if (causes.isEmpty()) {
            return Optional.empty();
        }
        List<String> first = new ArrayList<>();
        if (codes.contains(FindingCode.OIL_COLD)) {
            first.add(OIL);
        }
        if (codes.contains(FindingCode.HOPPER_NEARLY_EMPTY)) {
            first.add(EMPTY);
        }
        causes.removeAll(first);
        return Optional.of("Look for "
                + (first.isEmpty() ? "" : String.join(" and ", first) + ", as was written down, and then for ")
                + either(List.copyOf(causes)) + "."
                + (isAmong(first, causes, BRIDGING)
                        ? " Nobody enters the hopper: bridged material is loosened from outside, locked out."
                        : "")
                + (isAmong(first, causes, VALVE) ? " Oil is hot and under pressure: no hand near a leak." : ""));
    }

    private static boolean isAmong(List<String> first, Set<String> others, String cause) {
        return first.contains(cause) || others.contains(cause);
    }

    private static List<String> of(FindingCode code) {
        return switch (code) {
            case CATCHES_SCATTER, OUTLYING_CATCH, OUTLYING_OF_THREE ->
                List.of(BRIDGING, EMPTY, SLIPPED, OIL, CONTAINER);
            case FILL_IMPOSSIBLE, FILL_IMPLAUSIBLE, FILL_UNLIKE_FLEET -> List.of(SLIPPED, SHAFT, BRIDGING);
            case CALIBRATION_DISAGREES -> List.of(SLIPPED, BRIDGING, SLOT, EMPTY);
            case CORRECTION_TOO_LARGE -> List.of(SLOT, SLIPPED, BRIDGING, WEAR);
            case OPENING_MISFIT, CURVE_SCATTER, CURVE_IMPOSSIBLE -> List.of(SLIPPED, BRIDGING);
            case SHORTFALL, START_UP_LOSS, STEADY_FLOW_OFF -> List.of(VALVE, OIL, BRIDGING);
            case OVERRUN -> List.of(SLIPPED, VALVE);
            default -> List.of();
        };
    }

    private static List<String> ofLiquid(FindingCode code) {
        return switch (code) {
            case PUMPED_VOLUME_IMPLAUSIBLE, PUMPED_VOLUME_IMPOSSIBLE ->
                List.of(AIR, WORN_PUMP, STRAINER, LITERS, SHAFT);
            case METERED_VOLUME_IMPLAUSIBLE, METERED_VOLUME_IMPOSSIBLE -> List.of(AIR, K_FACTOR, LITERS);
            case CATCHES_SCATTER, OUTLYING_CATCH, OUTLYING_OF_THREE, CALIBRATION_DISAGREES ->
                List.of(AIR, STRAINER, NOT_EMPTIED, TANK);
            case CORRECTION_TOO_LARGE, FILL_UNLIKE_FLEET -> List.of(AIR, SLOT, WORN_PUMP);
            case LIQUID_DENSITY_DIFFERS -> List.of(OTHER_LIQUID);
            case SHORTFALL, START_UP_LOSS, STEADY_FLOW_OFF -> List.of(STRAINER, TANK, VALVE);
            case OVERRUN -> List.of(VALVE, CHECK_VALVE);
            default -> List.of();
        };
    }

    private static String either(List<String> causes) {
        int last = causes.size() - 1;
        return last == 0
                ? causes.get(0)
                : String.join(", ", causes.subList(0, last)) + (last > 1 ? ", or " : " or ") + causes.get(last);
    }
}
