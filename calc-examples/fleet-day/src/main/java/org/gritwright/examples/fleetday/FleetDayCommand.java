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
import org.gritwright.core.record.PlacedDocument;
import org.gritwright.core.spi.TypeRegistry;
import org.jspecify.annotations.Nullable;
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
            "1:Done, and with --fail-on-attention: a truck or a tank needs attention.",
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
            description = "The fleet's day: a gritwright/fleet-day document (JSON); - for standard input.")
    private Path input;

    @Option(
            names = "--output",
            paramLabel = "FOLDER",
            description = {
                "Where the results go, needed by all modes but check; made if it isn't there. Each run has a folder of its own in it, run-0001 and so on,",
                "with report.html, fleet-day.csv and records/, one calibration record (JSON) a truck; and the report"
                        + " as report.pdf, and in trucks/ a PDF a truck. Of booms and tanks there are booms.csv,"
                        + " tanks.csv and tank-records/. Of more than 200 trucks the pages are overviews, and each"
                        + " truck has its own in trucks/ and cabs/.",
                "current.json names the last complete run. No earlier run is changed."
            })
    private @Nullable Path output;

    /** What the program is to do. */
    enum Mode {
        REPORT,
        PLAN,
        CHECK
    }

    @Option(
            names = "--mode",
            defaultValue = "report",
            paramLabel = "report|plan|check",
            description = {
                "report (the default): work out what was caught.",
                "plan: before anything is dropped, say how much to catch on each truck, for how long and how often, and"
                        + " how long the day takes; the document's plan says what is wanted. Writes plan.html, a"
                        + " worksheet to print, the same as plan.pdf, in trucks/ a PDF a truck, and type-in.html, a page on"
                        + " which the finished worksheets are typed in; it saves the day's document. blank-sheets.html and"
                        + " blank-sheets.pdf are for measuring a drive's range, and what lies where across the road.",
                "check: read the document and list every problem in it, and what looks like a slip of the pen; write"
                        + " nothing. Ends with 2 if there is a problem."
            })
    private Mode mode;

    @Option(
            names = "--fail-on-attention",
            description = {
                "End with exit code 1 when a truck needs attention before it goes out, or a tank before it is used;",
                "with --mode plan, when one can't be planned, can't reach what is wanted, or can't be verified as planned;",
                "with --mode check, when something looks like a slip."
            })
    private boolean failOnAttention;

    @Option(
            names = "--no-pdf",
            description = "Write no PDF files, which take a few seconds; who only reads the records needs none.")
    private boolean withoutPdf;

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
        PrintWriter plainOut = new PrintWriter(new PlainWriter(out), true);
        PrintWriter plainErr = new PrintWriter(new PlainWriter(err), true);
        CommandLine commandLine = new CommandLine(new FleetDayCommand())
                .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
                .setOut(plainOut)
                .setErr(plainErr)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setExecutionExceptionHandler((failure, command, parsed) -> failed(plainErr, failure));
        try {
            int exitCode = commandLine.execute(arguments);
            plainOut.flush();
            // A print writer keeps to itself that the disk is full or the pipe is closed.
            return out.checkError() ? failed(plainErr, new IOException("can't write to standard output")) : exitCode;
        } catch (Error failure) {
            return failed(plainErr, failure);
        } finally {
            plainOut.flush();
            plainErr.flush();
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
        try {
            if (mode != Mode.CHECK) {
                folder();
            }
            err.println("Reading " + input);
            PlacedDocument<FleetDay> read = InputFile.read(input);
            FleetDay day = read.document();
            TypeRegistry types = types();
            types.rejected().forEach(left -> err.println(PlainText.oneLine("Left out spreader type " + left)));
            return switch (mode) {
                case REPORT -> report(day, types);
                case PLAN -> plan(day, types);
                case CHECK -> check(read, types);
            };
        } catch (BadInputException e) {
            // What is wrong is what a check was asked for.
            PrintWriter told = mode == Mode.CHECK ? spec.commandLine().getOut() : err;
            e.lines().forEach(line -> told.println(PlainText.oneLine(line)));
            return BAD_INPUT;
        }
    }

    private Path folder() {
        if (output == null) {
            throw new CommandLine.ParameterException(spec.commandLine(), "Missing required option: '--output=FOLDER'");
        }
        return output;
    }

    private int check(PlacedDocument<FleetDay> read, TypeRegistry types) throws BadInputException {
        DayCheck check = InputFile.check(input, read, types);
        check.lines(input.toString())
                .forEach(line -> spec.commandLine().getOut().println(PlainText.oneLine(line)));
        if (!check.problems().isEmpty()) {
            return BAD_INPUT;
        }
        return failOnAttention && !check.doubts().isEmpty() ? NEEDS_ATTENTION : DONE;
    }

    private int report(FleetDay day, TypeRegistry types) throws BadInputException, IOException {
        PrintWriter err = spec.commandLine().getErr();
        err.println("Assessing " + Words.count(day.trucks().size(), "truck"));
        FleetResult result = InputFile.assess(input, day, types);
        try (OutputFolder folder = OutputFolder.open(folder(), err::println)) {
            OutputFolder.Written written = folder.write(result, !withoutPdf);
            new ConsoleSummary(written.result())
                    .lines(written.page())
                    .forEach(spec.commandLine().getOut()::println);
            return failOnAttention && written.result().needsAttention() ? NEEDS_ATTENTION : DONE;
        }
    }

    private int plan(FleetDay day, TypeRegistry types) throws BadInputException, IOException {
        PrintWriter err = spec.commandLine().getErr();
        err.println("Planning " + Words.count(day.trucks().size(), "truck"));
        DayPlan plan = InputFile.plan(input, day, types);
        try (OutputFolder folder = OutputFolder.open(folder(), err::println)) {
            Path page = folder.write(plan, !withoutPdf);
            new PlanSummary(plan).lines(page).forEach(spec.commandLine().getOut()::println);
            return failOnAttention && !plan.isWhole() ? NEEDS_ATTENTION : DONE;
        }
    }
}
