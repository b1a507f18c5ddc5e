package org.gritwright.examples.fleetday;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.spi.TypeRegistry;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The command line: options, progress, exit codes. What it does is in {@link FleetResult} and {@link OutputFolder}. */
@Command(
        name = "fleet-day",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        sortOptions = false,
        usageHelpAutoWidth = false,
        description = {
            "Works out a fleet's calibration day: which trucks are right, what is wrong with the others, and what to"
                    + " do next.",
            "Progress goes to standard error; the table, most urgent trucks first, to standard output; all text is"
                    + " UTF-8."
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:Done. What needs attention is said in the output.",
            "1:Done, and with --fail-on-attention: a truck needs attention.",
            "2:Bad input: an option, an unreadable file, or a document with mistakes, all of which are listed.",
            "3:The results could not be written, or something else failed that should not."
        })
public final class FleetDayCommand implements Callable<Integer> {
    static final int DONE = 0;
    static final int NEEDS_ATTENTION = 1;
    static final int BAD_INPUT = CommandLine.ExitCode.USAGE;
    static final int FAILED = 3;

    @Option(
            names = "--input",
            required = true,
            paramLabel = "FILE",
            description = "The fleet's day: a gritwright/fleet-day document (JSON).")
    private Path input;

    @Option(
            names = "--output",
            required = true,
            paramLabel = "FOLDER",
            description = {
                "Where the results go; made if it isn't there:",
                "report.html, fleet-day.csv and records/, with one calibration record (JSON) a truck."
            })
    private Path output;

    /** What the program is to do. */
    enum Mode {
        REPORT,
        PLAN
    }

    @Option(
            names = "--mode",
            defaultValue = "report",
            paramLabel = "report|plan",
            description = {
                "report (the default): work out what was caught.",
                "plan: before anything is dropped, say how much to catch on each truck, for how long and how often, and"
                        + " how long the day takes; the document's plan says what is wanted. Writes plan.html, a"
                        + " worksheet to print."
            })
    private Mode mode;

    @Option(
            names = "--fail-on-attention",
            description = {
                "End with exit code 1 when a truck needs attention before it goes out;",
                "with --mode plan, when one can't be planned or can't reach what is wanted."
            })
    private boolean failOnAttention;

    @Spec
    private CommandSpec spec;

    private FleetDayCommand() {}

    /**
     * Runs the program and ends the Java virtual machine with its exit code.
     *
     * @param arguments see {@code --help}
     */
    public static void main(String[] arguments) {
        System.exit(run(utf8(FileDescriptor.out), utf8(FileDescriptor.err), arguments));
    }

    /** The same text on every machine, whatever its character set is. */
    private static PrintWriter utf8(FileDescriptor stream) {
        return new PrintWriter(new OutputStreamWriter(new FileOutputStream(stream), StandardCharsets.UTF_8), true);
    }

    /** Runs the program in this Java virtual machine and returns the exit code. */
    static int run(PrintWriter out, PrintWriter err, String... arguments) {
        CommandLine commandLine = new CommandLine(new FleetDayCommand())
                .setOut(out)
                .setErr(err)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setExecutionExceptionHandler((failure, command, parsed) -> failed(err, failure));
        try {
            return commandLine.execute(arguments);
        } catch (Error failure) {
            return failed(err, failure);
        } finally {
            out.flush();
            err.flush();
        }
    }

    private static int failed(PrintWriter err, Throwable failure) {
        err.println(PlainText.oneLine("fleet-day failed: " + Failure.words(failure)));
        return FAILED;
    }

    /** The built-in types, and those of any jar that was put beside this program on the class path or module path. */
    private static TypeRegistry types() {
        return BuiltInTypes.registry().withServices(FleetDayCommand.class.getClassLoader());
    }

    @Override
    public Integer call() throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        FleetResult result;
        try {
            err.println("Reading " + input);
            FleetDay day = InputFile.read(input);
            TypeRegistry types = types();
            types.rejected().forEach(left -> err.println(PlainText.oneLine("Left out spreader type " + left)));
            if (mode == Mode.PLAN) {
                return plan(day, types);
            }
            err.println("Assessing " + Words.count(day.trucks().size(), "truck"));
            result = InputFile.assess(input, day, types);
            OutputFolder.make(output);
        } catch (BadInputException e) {
            e.lines().forEach(line -> err.println(PlainText.oneLine(line)));
            return BAD_INPUT;
        }
        new OutputFolder(output, err::println).write(result);
        new ConsoleSummary(result).lines(output).forEach(spec.commandLine().getOut()::println);
        return failOnAttention && result.needAttention() > 0 ? NEEDS_ATTENTION : DONE;
    }

    private int plan(FleetDay day, TypeRegistry types) throws BadInputException, IOException {
        PrintWriter err = spec.commandLine().getErr();
        err.println("Planning " + Words.count(day.trucks().size(), "truck"));
        DayPlan plan = InputFile.plan(input, day, types);
        OutputFolder.makePlain(output);
        new OutputFolder(output, err::println).write(plan);
        new PlanSummary(plan).lines(output).forEach(spec.commandLine().getOut()::println);
        return failOnAttention && plan.needAttention() > 0 ? NEEDS_ATTENTION : DONE;
    }
}
