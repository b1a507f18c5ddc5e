package org.gritwright.examples.telemetry;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.apache.hadoop.conf.Configuration;
import org.apache.spark.sql.SparkSession;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.RotationalSpeed;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The command line: options, what is said, exit codes. What it does is in {@link SeasonJob} and {@link InventedFiles}. */
@Command(
        name = "season",
        mixinStandardHelpOptions = true,
        version = "Gritwright example: telemetry",
        scope = CommandLine.ScopeType.INHERIT,
        sortOptions = false,
        subcommands = CommandLine.HelpCommand.class,
        description =
                "Telemetry of a season on Apache Spark: what each truck laid, when and where, and how sure that is.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:Done.",
            "2:Bad input: an option, a folder, a file, a record; nothing was written.",
            "3:Something else failed; nothing was written."
        })
public final class SeasonCommand {
    static final int DONE = 0;
    static final int BAD_INPUT = CommandLine.ExitCode.USAGE;
    static final int FAILED = 3;

    /** The demo's. */
    private static final int TRIPS = 6;

    private static final int HOURS = 3;

    /** More wouldn't fit between the storms. */
    private static final int MOST_TRIPS = 150;

    private static final int MOST_HOURS = 9;

    @Spec
    private CommandSpec spec;

    private SeasonCommand() {}

    /** What is read, and where what comes of it goes. */
    static final class Folders {
        @Option(
                names = "--rows",
                required = true,
                paramLabel = "FOLDER",
                description =
                        "Parquet files with the columns truck, time, shaft_pulse, road_pulse, gate_in, slot, mode,"
                                + " and, if there are any, road_id, liquid_pulse.")
        private String rows;

        @Option(
                names = "--records",
                required = true,
                paramLabel = "FOLDER",
                description = "Calibration records (JSON), one or more of each truck.")
        private String records;

        @Option(names = "--output", required = true, paramLabel = "FOLDER", description = "A new folder.")
        private String output;
    }

    /** What may be said of the rows. */
    static final class RowOptions {
        @Option(
                names = "--offset",
                defaultValue = "-06:00",
                paramLabel = "OFFSET",
                description =
                        "The yards' offset from UTC, for records that name a day alone and for when a day begins that is"
                                + " summed up: ${DEFAULT-VALUE}. It is the same all year: where clocks change, summer's days"
                                + " begin an hour off midnight.")
        private ZoneOffset offset;

        @Option(
                names = "--shaft-rolls-over-at",
                defaultValue = "65536 pulse",
                paramLabel = "COUNT",
                description = "Where the shaft's counters start again at 0: ${DEFAULT-VALUE}.")
        private String shaftRollsOverAt;

        @Option(
                names = "--road-rolls-over-at",
                defaultValue = "16777216 pulse",
                paramLabel = "COUNT",
                description = "Where the road's counters do: ${DEFAULT-VALUE}.")
        private String roadRollsOverAt;

        @Option(
                names = "--liquid-rolls-over-at",
                defaultValue = "65536 pulse",
                paramLabel = "COUNT",
                description = "Where the counters of liquids that wet do: ${DEFAULT-VALUE}.")
        private String liquidRollsOverAt;

        @Option(
                names = "--most-liquid",
                defaultValue = "20 gal/min",
                paramLabel = "FLOW",
                description = "No more of such a liquid runs: ${DEFAULT-VALUE}.")
        private String mostLiquid;

        @Option(
                names = "--fastest-shaft",
                defaultValue = "80 rev/min",
                paramLabel = "SPEED",
                description = "No shaft turns faster: ${DEFAULT-VALUE}.")
        private String fastestShaft;

        @Option(
                names = "--fastest-truck",
                defaultValue = "80 mi/h",
                paramLabel = "SPEED",
                description = "No truck goes faster: ${DEFAULT-VALUE}.")
        private String fastestTruck;

        @Option(
                names = "--longest-gap",
                defaultValue = "5 min",
                paramLabel = "TIME",
                description = "Rows that are farther apart can't be counted: ${DEFAULT-VALUE} (common practice, no"
                        + " source).")
        private String longestGap;

        @Option(
                names = "--piece",
                defaultValue = "0.1 mi",
                paramLabel = "LENGTH",
                description = "How long a piece of a trip is: ${DEFAULT-VALUE}.")
        private String piece;

        @Option(
                names = "--band",
                defaultValue = "10",
                paramLabel = "PERCENT",
                description = "How far a piece's rate may be from its target, in percent: ${DEFAULT-VALUE} (common"
                        + " practice, no source).")
        private double band;

        @Option(
                names = "--found-errors",
                defaultValue = "AS_FOUND",
                paramLabel = "ONSET",
                description =
                        "How errors came about that verifications found: ${COMPLETION-CANDIDATES}. Where nobody knows,"
                                + " AS_LEFT and AS_FOUND are both bounds: ${DEFAULT-VALUE}. WITH_TURNS and WITH_AMOUNT"
                                + " read the rows of such trucks twice.")
        private FoundErrors foundErrors;

        SeasonOptions checked() {
            return new SeasonOptions(
                    offset,
                    Amounts.parse(RotationalSpeed.class, fastestShaft),
                    Amounts.parse(Speed.class, fastestTruck),
                    Amounts.parse(Time.class, longestGap),
                    Amounts.parse(PulseCount.class, shaftRollsOverAt),
                    Amounts.parse(PulseCount.class, roadRollsOverAt),
                    Amounts.parse(FlowRate.class, mostLiquid),
                    Amounts.parse(PulseCount.class, liquidRollsOverAt),
                    Amounts.parse(Length.class, piece),
                    Tolerance.percent(band),
                    foundErrors);
        }
    }

    /**
     * Runs the program and ends the Java virtual machine with its exit code.
     *
     * @param arguments see {@code --help}
     */
    public static void main(String[] arguments) {
        int code = run(
                new PrintWriter(System.out, true, StandardCharsets.UTF_8),
                new PrintWriter(System.err, true, StandardCharsets.UTF_8),
                arguments);
        System.exit(code);
    }

    /** Runs the program in this Java virtual machine and returns the exit code. */
    static int run(PrintWriter out, PrintWriter err, String... arguments) {
        return new CommandLine(new SeasonCommand())
                .setOut(out)
                .setErr(err)
                .setExecutionExceptionHandler((e, command, parsed) -> {
                    boolean bad = e instanceof BadInputException || e instanceof InvalidInputException;
                    command.getErr().println(bad ? e.getMessage() : "failed: " + words(e));
                    return bad ? BAD_INPUT : FAILED;
                })
                .execute(arguments);
    }

    private static String words(Throwable failure) {
        Throwable cause = failure;
        while (cause.getCause() != null) {
            cause = cause.getCause();
        }
        String message = cause.getMessage();
        return message == null
                ? cause.getClass().getSimpleName()
                : message.lines().findFirst().orElse("");
    }

    /** The types that calibration records may name: built-in ones, and those of plug-ins on the driver's class path. */
    static TypeRegistry types() {
        return BuiltInTypes.registry().withServices(SeasonCommand.class.getClassLoader());
    }

    @Command(
            name = "invent",
            description = "Writes invented rows and records of eight trucks: rows.parquet and records.")
    int invent(
            @Option(names = "--output", required = true, paramLabel = "FOLDER", description = "A new folder.")
                    String output,
            @Option(
                            names = "--trips",
                            defaultValue = "6",
                            description = "Trips of each truck, in six storms: ${DEFAULT-VALUE}.")
                    int trips,
            @Option(
                            names = "--hours",
                            defaultValue = "3",
                            description = "Hours of spreading in each trip, up to 9: ${DEFAULT-VALUE}.")
                    int hours,
            @Option(
                            names = "--seed",
                            defaultValue = "1",
                            description = "The same number gives the same rows: ${DEFAULT-VALUE}.")
                    long seed,
            @Option(names = "--cores", defaultValue = "*", description = "Without a cluster: how many cores.")
                    String cores)
            throws Exception {
        if (trips < 1 || trips > MOST_TRIPS || hours < 1 || hours > MOST_HOURS) {
            throw new BadInputException("can't invent " + trips + " trips of " + hours + " h: give 1 to " + MOST_TRIPS
                    + " trips of 1 h to " + MOST_HOURS + " h");
        }
        try (NewFolder folder = NewFolder.of(output, Engine.configuration());
                SparkSession spark = Engine.session(cores)) {
            new InventedFiles(trips, hours, seed).write(spark, types(), folder);
        }
        out().println("Wrote " + InventedFiles.ROWS + " and " + InventedFiles.RECORDS + " into " + output);
        return DONE;
    }

    @Command(
            name = "evaluate",
            description = {
                "Evaluates rows with what the records say was in force, and writes tables, a summary and pictures.",
                "A truck's rows lie in one file, one after the other in the order of time."
            })
    int evaluate(
            @CommandLine.Mixin Folders folders,
            @Option(
                            names = "--picture",
                            paramLabel = "TRUCK",
                            description =
                                    "The truck whose longest trip is drawn; without it the one that was least within"
                                            + " its band.")
                    @Nullable
                    String pictured,
            @Option(names = "--cores", defaultValue = "*", description = "Without a cluster: how many cores.")
                    String cores,
            @CommandLine.Mixin RowOptions options)
            throws Exception {
        SeasonOptions checked = options.checked();
        Configuration configuration = Engine.configuration();
        try (NewFolder folder = NewFolder.of(folders.output, configuration)) {
            SeasonInput input = SeasonInput.of(folders.rows, folders.records, types(), checked, configuration);
            input.checkPictured(Optional.ofNullable(pictured));
            input.contradictions().forEach(out()::println);
            try (SparkSession spark = Engine.session(cores)) {
                Summary summary = new SeasonJob(spark, checked).run(input, folder, Optional.ofNullable(pictured));
                new SeasonWords(out(), checked).tell(summary, folders.output);
            }
        }
        return DONE;
    }

    @Command(
            name = "sums",
            description = {
                "Adds up what each truck laid of each material on each day, as its display indicated, for the fleet's"
                        + " history.",
                "Writes laid-sums.jsonl: a line each, a document of format gritwright/fleet-event. Nothing is corrected"
                        + " backwards, whatever --found-errors says."
            })
    int sums(
            @CommandLine.Mixin Folders folders,
            @Option(names = "--cores", defaultValue = "*", description = "Without a cluster: how many cores.")
                    String cores,
            @CommandLine.Mixin RowOptions options)
            throws Exception {
        SeasonOptions checked = options.checked();
        Configuration configuration = Engine.configuration();
        try (NewFolder folder = NewFolder.of(folders.output, configuration)) {
            SeasonInput input = SeasonInput.of(folders.rows, folders.records, types(), checked, configuration);
            input.contradictions().forEach(out()::println);
            try (SparkSession spark = Engine.session(cores)) {
                sums(
                        LaidSums.of(spark, input, checked.offset()),
                        checked.offset(),
                        folder.unfinished(),
                        folders.output);
                folder.finish();
            }
        }
        return DONE;
    }

    private void sums(List<TruckDays> trucks, ZoneOffset offset, Folder folder, String output) throws IOException {
        int lines = LaidSums.write(trucks, offset, folder);
        out().printf(
                        Locale.ROOT,
                        "Wrote %,d sums of what %,d trucks laid, by day and material, into %s%n",
                        lines,
                        trucks.size(),
                        output + "/" + LaidSums.FILE);
        // What can't be counted is in no sum: where it is nearly all, a counter or a clock is another than was said.
        for (TruckDays truck : trucks) {
            if (truck.badRows() > 0) {
                out().printf(
                                Locale.ROOT,
                                "%s: %,d of %,d rows can't be counted; \"evaluate\" says why%n",
                                truck.truck(),
                                truck.badRows(),
                                truck.rows());
            }
        }
    }

    @Command(name = "demo", description = "Invents a season and evaluates it, in a new folder run-0001 and so on.")
    int demo(
            @Option(names = "--output", required = true, paramLabel = "FOLDER", description = "Where the runs are.")
                    String output,
            @Option(names = "--cores", defaultValue = "*", description = "Without a cluster: how many cores.")
                    String cores,
            @CommandLine.Mixin RowOptions options)
            throws Exception {
        SeasonOptions checked = options.checked();
        Configuration configuration = Engine.configuration();
        String run = free(output, configuration);
        Folder invented = Folder.of(run + "/invented", configuration);
        try (NewFolder made = NewFolder.of(invented.toString(), configuration);
                NewFolder season = NewFolder.of(run + "/season", configuration);
                SparkSession spark = Engine.session(cores)) {
            new InventedFiles(TRIPS, HOURS, 1).write(spark, types(), made);
            SeasonInput input = SeasonInput.of(
                    invented.child(InventedFiles.ROWS),
                    invented.child(InventedFiles.RECORDS),
                    types(),
                    checked,
                    configuration);
            List<TruckDays> days = LaidSums.of(spark, input, checked.offset());
            Summary summary = new SeasonJob(spark, checked).run(input, season, Optional.empty());
            new SeasonWords(out(), checked).tell(summary, run);
            sums(days, checked.offset(), Folder.of(run, configuration), run);
        }
        return DONE;
    }

    private static String free(String output, Configuration configuration) throws IOException {
        for (int number = 1; ; number++) {
            String run = output + String.format(Locale.ROOT, "/run-%04d", number);
            if (!Folder.of(run, configuration).exists()) {
                return run;
            }
        }
    }

    private PrintWriter out() {
        return spec.commandLine().getOut();
    }
}
