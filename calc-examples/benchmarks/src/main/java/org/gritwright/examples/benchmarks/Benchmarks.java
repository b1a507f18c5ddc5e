package org.gritwright.examples.benchmarks;

import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.CommandLineOptionException;
import org.openjdk.jmh.runner.options.CommandLineOptions;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** Runs all benchmarks, with the bytes allocated per operation. */
public final class Benchmarks {

    private Benchmarks() {}

    /**
     * Runs the benchmarks.
     *
     * @param arguments JMH's own options, for example a pattern of names
     * @throws RunnerException if JMH can't run
     * @throws CommandLineOptionException if an option is unknown
     */
    public static void main(String[] arguments) throws RunnerException, CommandLineOptionException {
        new Runner(new OptionsBuilder()
                        .parent(new CommandLineOptions(arguments))
                        .addProfiler(GCProfiler.class)
                        .build())
                .run();
    }
}
