package org.gritwright.core.envelope;

import java.io.Serializable;
import org.gritwright.units.check.Require;

/**
 * An envelope as plain numbers in SI units, for charts and for rows of data. Immutable, thread-safe, a value.
 *
 * @param leastFlow the flow at the slowest steady shaft speed, kg/s, 0 or more
 * @param greatestFlow the greatest flow, kg/s, greater than 0
 * @param keepsSlowest whether the shaft goes on at its slowest where less is asked for
 */
public record CompiledEnvelope(double leastFlow, double greatestFlow, boolean keepsSlowest) implements Serializable {
    /**
     * Checks the numbers.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public CompiledEnvelope {
        Require.notNegative("least flow", leastFlow);
        Require.positive("greatest flow", greatestFlow);
    }

    /**
     * The flow that a flow asked for comes to.
     *
     * @param asked kg/s; nothing is put down where nothing, less than nothing or no number is asked for
     * @return kg/s
     */
    public double flow(double asked) {
        if (!(asked > 0)) {
            return 0;
        }
        double most = Math.min(asked, greatestFlow);
        if (most >= leastFlow) {
            return most;
        }
        return keepsSlowest ? Math.min(leastFlow, greatestFlow) : 0;
    }

    /**
     * The rate that a rate comes to at a speed.
     *
     * @param rate kg/m
     * @param speed m/s; at a stand nothing is put down
     * @return kg/m
     */
    public double rate(double rate, double speed) {
        return speed > 0 ? flow(rate * speed) / speed : 0;
    }

    /**
     * Fills a chart, row by row.
     *
     * @param rates of the rows, kg/m
     * @param speeds of the columns, m/s
     * @param delivered receives {@code rates.length * speeds.length} rates, kg/m
     * @throws org.gritwright.units.InvalidInputException if it has another length
     */
    public void fill(double[] rates, double[] speeds, double[] delivered) {
        Require.that(
                delivered.length == rates.length * speeds.length,
                "cells of a chart",
                "as many as rates times speeds",
                delivered.length);
        int cell = 0;
        for (double rate : rates) {
            for (double speed : speeds) {
                delivered[cell++] = rate(rate, speed);
            }
        }
    }
}
