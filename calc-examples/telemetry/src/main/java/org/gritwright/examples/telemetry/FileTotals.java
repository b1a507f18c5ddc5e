package org.gritwright.examples.telemetry;

import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** What the driver gets of a file. */
record FileTotals<T extends OfTruck>(List<T> trucks, List<String> unknown) implements Serializable {
    private static final long serialVersionUID = 1L;

    static FileTotals<TruckTotals> of(FilePass.Result<TruckSeason> result) {
        return new FileTotals<>(
                result.trucks().stream().map(TruckSeason::totals).toList(), result.unknown());
    }

    /** Each truck once, by its id; nothing may be without a record. */
    static <T extends OfTruck> Map<String, T> byTruck(List<FileTotals<T>> files) throws BadInputException {
        Set<String> unknown = new TreeSet<>();
        files.forEach(file -> unknown.addAll(file.unknown()));
        if (!unknown.isEmpty()) {
            throw new BadInputException("rows of trucks without a calibration record: " + quoted(unknown));
        }
        Map<String, T> byTruck = ofKnown(files);
        if (byTruck.isEmpty()) {
            throw new BadInputException("there are no rows");
        }
        return byTruck;
    }

    /** Each truck that was evaluated once, by its id. */
    static <T extends OfTruck> Map<String, T> ofKnown(List<FileTotals<T>> files) throws BadInputException {
        Set<String> twice = new TreeSet<>();
        Map<String, T> byTruck = new TreeMap<>();
        for (FileTotals<T> file : files) {
            for (T truck : file.trucks()) {
                if (byTruck.put(truck.truck(), truck) != null) {
                    twice.add(truck.truck());
                }
            }
        }
        if (!twice.isEmpty()) {
            throw new BadInputException("rows that don't lie together, of " + quoted(twice)
                    + ": a truck's rows belong into one file, one after the other");
        }
        return byTruck;
    }

    private static String quoted(Set<String> trucks) {
        return "\"" + String.join("\", \"", trucks) + "\"";
    }
}
