package org.gritwright.examples.fleetday;

import java.util.HashSet;
import java.util.Locale;
import java.util.Set;

/**
 * File names for trucks' records that are safe on every file system, one after the other.
 *
 * <p>Only letters, digits, full stop, hyphen and underscore of ASCII stay; a name that is taken (upper and lower case
 * are one) gets a number. The record itself holds the truck's id as it is.
 */
final class RecordNames {
    private static final int LONGEST = 60;
    private static final Set<String> DEVICES = Set.of("con", "prn", "aux", "nul");

    private final Set<String> taken = new HashSet<>();

    String next(String truckId) {
        String name = truckId.replaceAll("[^A-Za-z0-9._-]", "_");
        name = name.substring(0, Math.min(LONGEST, name.length()));
        // A program that is given all files of a folder may take a leading hyphen for an option.
        if (name.startsWith(".") || name.startsWith("-") || isDevice(name)) {
            name = "_" + name;
        }
        String free = name;
        for (int number = 2; !taken.add(free.toLowerCase(Locale.ROOT)); number++) {
            free = name + "-" + number;
        }
        return free + ".json";
    }

    /** Windows keeps a few names for devices, whatever follows a full stop. */
    private static boolean isDevice(String name) {
        String stem = name.toLowerCase(Locale.ROOT).replaceFirst("\\..*", "");
        return DEVICES.contains(stem) || stem.matches("(com|lpt)[0-9]");
    }
}
