package org.gritwright.examples.fleetmemory;

import java.io.BufferedInputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.gritwright.core.history.History;
import org.gritwright.core.history.drift.DriftRule;
import org.gritwright.core.history.due.Due;
import org.gritwright.core.history.due.DueList;
import org.gritwright.core.history.due.DueRule;
import org.gritwright.core.history.due.DueSettings;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.units.InvalidInputException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The command line: options, what is said, exit codes. */
@Command(
        name = "fleet-memory",
        mixinStandardHelpOptions = true,
        version = "Gritwright example: fleet memory",
        scope = CommandLine.ScopeType.INHERIT,
        sortOptions = false,
        subcommands = CommandLine.HelpCommand.class,
        description =
                "Keeps a fleet's calibration records and events for years in a database: what each display holds, what is due,"
                        + " what drifts.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:Done.",
            "1:check found damage.",
            "2:Bad input: an option, a file, a document, a database; nothing was changed.",
            "3:Something else failed; nothing was changed."
        })
public final class FleetMemoryCommand {
    static final int DONE = 0;
    static final int DAMAGED = 1;
    static final int BAD_INPUT = CommandLine.ExitCode.USAGE;
    static final int FAILED = 3;

    private static final int MOST_PERCENT = 100;
    private static final double DEMO_TOLERANCE = 4;

    private final LocalDate today;
    private final Documents documents;

    @Spec
    private CommandSpec spec;

    private FleetMemoryCommand(LocalDate today) {
        this.today = today;
        documents = new Documents(BuiltInTypes.registry().withServices(FleetMemoryCommand.class.getClassLoader()));
    }

    /** Where documents are kept. */
    static final class Place {
        @Option(
                names = "--database",
                defaultValue = "fleet-memory.db",
                paramLabel = "DATABASE",
                description = "A file (SQLite), or jdbc:postgresql://HOST/NAME?user=USER; a password belongs into"
                        + " .pgpass: ${DEFAULT-VALUE}.")
        private String database;

        Database checked() throws BadInputException {
            return Database.of(database);
        }
    }

    /** As of which day documents are looked at. */
    static final class View {
        @Option(names = "--on", paramLabel = "DAY", description = "The day, such as 2026-10-19: today.")
        private @Nullable LocalDate on;

        @Option(
                names = "--offset",
                defaultValue = "-06:00",
                paramLabel = "OFFSET",
                description = "The yard's offset from UTC, for documents that name a day alone: ${DEFAULT-VALUE}.")
        private ZoneOffset offset;
    }

    /** What trucks are planned to lay. */
    static final class Plans {
        @Option(
                names = "--planned",
                paramLabel = "FILE",
                description = "What trucks are planned to lay: CSV with the columns truck, material, mass"
                        + " (such as \"120 ton\"); what puts the most at stake is then listed first.")
        private @Nullable Path planned;

        List<DueSettings.Planned> read() throws BadInputException {
            return planned == null ? List.of() : Planned.read(planned);
        }
    }

    /** How far an error may be from zero. */
    static final class Limits {
        @Option(
                names = "--tolerance",
                defaultValue = "4",
                paramLabel = "PERCENT",
                description = "How far an error may be from zero, in percent: ${DEFAULT-VALUE} (common practice, no"
                        + " source).")
        private double tolerance;

        @Option(
                names = "--false-alarms",
                defaultValue = "1",
                paramLabel = "NUMBER",
                description = "How many charts of trucks in order may alarm within " + Drifts.VALUES
                        + " values of each point, on average: ${DEFAULT-VALUE} (common practice, no source).")
        private double falseAlarms;

        Tolerance checked() throws BadInputException {
            if (!(tolerance > 0 && tolerance < MOST_PERCENT)) {
                throw new BadInputException("--tolerance must be above 0 and below 100: " + tolerance);
            }
            if (!(falseAlarms > 0)) {
                throw new BadInputException("--false-alarms must be above 0: " + falseAlarms);
            }
            return Tolerance.percent(tolerance);
        }
    }

    /**
     * Runs the program and ends the Java virtual machine with its exit code.
     *
     * @param arguments see {@code --help}
     */
    public static void main(String[] arguments) {
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        System.exit(run(utf8(FileDescriptor.out), utf8(FileDescriptor.err), today, arguments));
    }

    /** The same text on every machine, whatever its character set is. */
    private static PrintWriter utf8(FileDescriptor stream) {
        return new PrintWriter(new OutputStreamWriter(new FileOutputStream(stream), StandardCharsets.UTF_8), true);
    }

    /** Runs the program in this Java virtual machine and returns the exit code. */
    static int run(PrintWriter out, PrintWriter err, LocalDate today, String... arguments) {
        return new CommandLine(new FleetMemoryCommand(today))
                .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
                .registerConverter(LocalDate.class, Typed::day)
                .registerConverter(ZoneOffset.class, Typed::offset)
                .registerConverter(Path.class, Typed::path)
                .registerConverter(double.class, Typed::number)
                .setParameterExceptionHandler((e, typed) -> misused(e))
                .setOut(out)
                .setErr(err)
                .setExecutionExceptionHandler((e, command, parsed) -> failed(command, e))
                .execute(arguments);
    }

    /** What is wrong stands alone: below it, all options would push it off the screen. */
    private static int misused(CommandLine.ParameterException misuse) {
        CommandLine command = misuse.getCommandLine();
        say(command.getErr(), List.of(misuse.getMessage()));
        if (command.getParent() == null) {
            command.usage(command.getErr());
        } else {
            String name = command.getCommandSpec().qualifiedName();
            say(command.getErr(), List.of("Say " + name + " --help to see what is accepted."));
        }
        return BAD_INPUT;
    }

    private static int failed(CommandLine command, Exception failure) {
        if (failure instanceof BadInputException bad) {
            say(command.getErr(), bad.lines());
            return BAD_INPUT;
        }
        boolean isBad = failure instanceof InvalidInputException;
        say(command.getErr(), List.of(isBad ? failure.getMessage() : "failed: " + Failure.words(failure)));
        return isBad ? BAD_INPUT : FAILED;
    }

    /** Names come from files: none may move the cursor or begin another line. */
    private static void say(PrintWriter out, List<String> lines) {
        lines.forEach(line -> out.println(line.replaceAll("\\p{C}", "?")));
    }

    private void say(String line) {
        say(List.of(line));
    }

    private void say(List<String> lines) {
        say(spec.commandLine().getOut(), lines.stream().map(Words::times).toList());
    }

    /** What is done with an open database. */
    private interface Job<T> {
        T run(Store store) throws SQLException, IOException, BadInputException;
    }

    private static <T> T reading(Database database, Job<T> job) throws SQLException, IOException, BadInputException {
        return with(database, false, job);
    }

    private static <T> T writing(Database database, Job<T> job) throws SQLException, IOException, BadInputException {
        return with(database, true, job);
    }

    private static <T> T with(Database database, boolean isWriting, Job<T> job)
            throws SQLException, IOException, BadInputException {
        try (Store store = isWriting ? Store.make(database) : Store.open(database)) {
            return job.run(store);
        } catch (SQLException e) {
            Optional<String> words = database.words(e);
            if (words.isPresent()) {
                throw new BadInputException(words.get());
            }
            throw e;
        }
    }

    @Command(
            name = "import",
            description = {
                "Keeps what files hold: fleet days (one record a truck), calibration records, fleet events, accounts of"
                        + " seasons, exports; a file may have a document in each line.",
                "All of it or nothing. What is there already changes nothing; what is other under the same name is refused"
                        + " unless --why says why it takes its place."
            })
    int importFiles(
            @Mixin Place place,
            @Option(
                            names = "--why",
                            paramLabel = "REASON",
                            description = "Why what stands may be replaced; it is kept with this reason.")
                    @Nullable
                    String why,
            @Parameters(arity = "1..*", paramLabel = "FILE", description = "The files (JSON, JSON lines).")
                    List<Path> files)
            throws SQLException, IOException, BadInputException {
        Database database = place.checked();
        if (why != null && why.isBlank()) {
            throw new BadInputException("--why must say why");
        }
        database.check(true);
        List<String> slips = new ArrayList<>();
        try (Batch batch = Batch.in(database.folder())) {
            new InputFiles(documents).read(files, batch);
            Import.Result result = writing(database, store -> {
                Import.Result done = Import.of(store, documents, batch, Optional.ofNullable(why));
                slips.addAll(Slips.of(store, batch, today));
                return done;
            });
            say("Imported " + Words.count(files.size(), "file") + ": " + result.words());
            say(slips);
        }
        return DONE;
    }

    @Command(name = "due", description = "What is due, why, by when, and the least work that clears it.")
    int due(@Mixin Place place, @Mixin View view, @Mixin Limits limits, @Mixin Plans plans)
            throws SQLException, IOException, BadInputException {
        Tolerance tolerance = limits.checked();
        List<DueSettings.Planned> masses = plans.read();
        Database database = place.checked();
        History history = reading(database, store -> new Memory(store, documents, view.offset).ofFleet());
        List<WrittenSeason> seasons = reading(database, store -> new Memory(store, documents, view.offset).seasons());
        say(DueText.lines(Overview.of(history, tolerance, limits.falseAlarms, masses, day(view))
                .with(BalancedSeasons.of(history, seasons))));
        return DONE;
    }

    @Command(
            name = "pages",
            description = {
                "Writes pages that a browser shows and prints without a server: the fleet, what is due first, and a page a"
                        + " truck. Begin with index.html.",
                "All pages or none, in a folder that isn't there yet."
            })
    int pages(
            @Mixin Place place,
            @Mixin View view,
            @Mixin Limits limits,
            @Mixin Plans plans,
            @Option(names = "--output", required = true, paramLabel = "FOLDER", description = "The folder to make.")
                    Path output)
            throws SQLException, IOException, BadInputException {
        Tolerance tolerance = limits.checked();
        List<DueSettings.Planned> masses = plans.read();
        Database database = place.checked();
        PageFolder.check(output);
        History history = reading(database, store -> new Memory(store, documents, view.offset).ofFleet());
        List<WrittenSeason> seasons = reading(database, store -> new Memory(store, documents, view.offset).seasons());
        FittedCurves curves = reading(database, store -> new Memory(store, documents, view.offset).curves());
        writePages(
                Overview.of(history, tolerance, limits.falseAlarms, masses, day(view))
                        .with(curves)
                        .with(BalancedSeasons.of(history, seasons)),
                output);
        return DONE;
    }

    private void writePages(Overview fleet, Path output) throws IOException, BadInputException {
        PageFolder.write(output, Pages.of(fleet));
        say(fleet.seasons().withoutPage());
        say("Wrote " + Words.count(fleet.history().trucks().size(), "page") + " of trucks; begin with "
                + output.resolve(Pages.FIRST));
    }

    /** By the usual rules and the charts. */
    static List<Due> due(
            History history,
            Tolerance tolerance,
            Optional<DriftRule> charts,
            List<DueSettings.Planned> planned,
            LocalDate on) {
        List<DueRule> rules = new ArrayList<>(DueRule.usual());
        charts.ifPresent(rule -> rules.add(new DueRule.OnDrift(rule)));
        return DueList.of(history, DueSettings.usual(tolerance).by(rules).planning(planned), on);
    }

    private LocalDate day(View view) {
        return view.on == null ? today : view.on;
    }

    static Instant end(LocalDate day, ZoneOffset offset) {
        return day.atTime(LocalTime.MAX).toInstant(offset);
    }

    @Command(
            name = "truck",
            description =
                    "What a truck's display holds and how sure that is, what a season found at it, who changed what, and what"
                            + " contradicts itself.")
    int truck(
            @Mixin Place place,
            @Mixin View view,
            @Parameters(paramLabel = "TRUCK", description = "The truck's id.") String truck)
            throws SQLException, IOException, BadInputException {
        Database database = place.checked();
        History history = reading(database, store -> new Memory(store, documents, view.offset).ofTruck(truck));
        List<WrittenSeason> all = reading(database, store -> new Memory(store, documents, view.offset).seasons());
        List<WrittenSeason> its = SeasonDoubts.of(truck, all, day(view));
        // What a season found at a truck depends on all that took part in it; where it took part in none, the fleet
        // isn't
        // read.
        History fleet = its.isEmpty()
                ? history
                : reading(database, store -> new Memory(store, documents, view.offset).ofFleet());
        BalancedSeasons seasons = BalancedSeasons.of(fleet, its, all);
        say(new TruckText(history, truck, end(day(view), view.offset))
                .lines(new SeasonDoubts(fleet, seasons.pages(), day(view)).of(truck), seasons.withoutPage()));
        return DONE;
    }

    @Command(name = "drift", description = "What drifts of what leaves per revolution, at all points of all trucks.")
    int drift(@Mixin Place place, @Mixin View view, @Mixin Limits limits)
            throws SQLException, IOException, BadInputException {
        Tolerance tolerance = limits.checked();
        Database database = place.checked();
        History history = reading(database, store -> new Memory(store, documents, view.offset).ofFleet());
        Instant at = end(day(view), view.offset);
        Drifts drifts = Drifts.of(history, limits.falseAlarms, at);
        say(new DriftText(history, drifts, tolerance, limits.falseAlarms, at).lines());
        return DONE;
    }

    @Command(
            name = "season",
            description = {
                "Makes a season's account add up: what trucks drew, what came by ticket, what surveys found.",
                "Says what doesn't fit, what can't be told apart, and how large an error would have been found."
            })
    int season(
            @Mixin Place place,
            @Mixin View view,
            @Parameters(arity = "0..1", paramLabel = "SEASON", description = "Its name; the latest if nothing is said.")
                    @Nullable
                    String name)
            throws SQLException, IOException, BadInputException {
        Database database = place.checked();
        List<WrittenSeason> seasons = reading(database, store -> new Memory(store, documents, view.offset).seasons());
        WrittenSeason written = chosen(seasons, name);
        History history = reading(database, store -> new Memory(store, documents, view.offset).ofFleet());
        say(new SeasonText(SeasonAccount.page(history, written, seasons)).lines());
        return DONE;
    }

    private static WrittenSeason chosen(List<WrittenSeason> seasons, @Nullable String name) throws BadInputException {
        List<WrittenSeason> found = seasons.stream()
                .filter(one -> name == null || one.season().equals(name))
                .toList();
        if (found.isEmpty()) {
            throw new BadInputException(
                    seasons.isEmpty()
                            ? "no account of a season was imported yet"
                            : "there is no account of season \"" + name + "\"; known are "
                                    + seasons.stream()
                                            .map(WrittenSeason::season)
                                            .collect(Collectors.joining(", ")));
        }
        return found.get(0);
    }

    @Command(
            name = "export",
            description = "Writes all that is kept, replaced documents too, as lines of JSON that import reads.")
    int export(@Mixin Place place, @Parameters(paramLabel = "FILE", description = "The file to write.") Path file)
            throws SQLException, IOException, BadInputException {
        Database database = place.checked();
        say("Wrote "
                + words(reading(
                        database, store -> WholeFile.write(file, out -> ExportLines.write(store, out), written -> {})))
                + " to " + file);
        return DONE;
    }

    private static String words(ExportLines.Written written) {
        return Words.count(written.standing(), "document") + " and " + written.replaced() + " replaced";
    }

    @Command(
            name = "backup",
            description = {
                "Writes an export and reads it back, every document of it, before it takes the file's name.",
                "Copy it to another machine: what lies beside the database is lost with it."
            })
    int backup(@Mixin Place place, @Parameters(paramLabel = "FILE", description = "The file to write.") Path file)
            throws SQLException, IOException, BadInputException {
        Database database = place.checked();
        ExportLines.Written written = reading(
                database,
                store -> WholeFile.write(file, out -> ExportLines.write(store, out), copy -> readBack(copy, file)));
        say("Wrote " + words(written) + " to " + file + " and read them back");
        return DONE;
    }

    private void readBack(Path copy, Path file) throws IOException, BadInputException {
        String name = file + " as read back";
        Portions portions = new Portions(read -> {});
        portions.begin(name);
        try (InputStream in = new BufferedInputStream(Files.newInputStream(copy))) {
            new ExportLines(documents).read(in, name, portions);
        }
        portions.end();
    }

    @Command(name = "restore", description = "Puts a backup into a database that holds nothing yet.")
    int restore(@Mixin Place place, @Parameters(paramLabel = "FILE", description = "The backup.") Path file)
            throws SQLException, IOException, BadInputException {
        Database database = place.checked();
        database.check(true);
        try (Batch batch = Batch.in(database.folder())) {
            new InputFiles(documents).read(List.of(file), batch);
            Import.Result result =
                    writing(database, store -> Import.intoEmpty(store, documents, batch, database.name()));
            say("Restored " + Words.count(result.added(), "document") + " and " + batch.replaced() + " replaced");
        }
        return DONE;
    }

    @Command(
            name = "check",
            description = "Whether all that is kept is whole and can be read, and what contradicts itself.")
    int check(@Mixin Place place, @Mixin View view) throws SQLException, IOException, BadInputException {
        Database database = place.checked();
        Check check = reading(database, store -> Check.of(store, documents, view.offset));
        say(check.lines());
        return check.damages().isEmpty() ? DONE : DAMAGED;
    }

    @Command(
            name = "demo",
            description =
                    "Invents three seasons of 24 trucks, imports them, says what is due, what drifts and whether a season adds up, and"
                            + " writes the pages,"
                            + " in a new folder run-0001 and so on.")
    int demo(
            @Option(names = "--output", required = true, paramLabel = "FOLDER", description = "Where the runs are.")
                    Path output)
            throws SQLException, IOException, BadInputException {
        Path run = newRun(output);
        List<Path> files = InventedSeasons.DEMO.write(run.resolve("documents"));
        Database database = Database.of(run.resolve("fleet-memory.db").toString());
        try (Batch batch = Batch.in(database.folder())) {
            new InputFiles(documents).read(files, batch);
            Import.Result result = writing(database, store -> Import.of(store, documents, batch, Optional.empty()));
            say("Imported " + Words.count(files.size(), "file") + " into " + database.name() + ": " + result.words());
        }
        History history = reading(database, store -> new Memory(store, documents, InventedSeasons.YARD).ofFleet());
        LocalDate on = InventedSeasons.DEMO_DAY;
        List<WrittenSeason> seasons =
                reading(database, store -> new Memory(store, documents, InventedSeasons.YARD).seasons());
        Overview fleet = Overview.of(history, Tolerance.percent(DEMO_TOLERANCE), 1, List.of(), on)
                .with(BalancedSeasons.of(history, seasons));
        say("");
        say(DueText.lines(fleet));
        say("");
        say(new DriftText(history, fleet.drifts(), fleet.tolerance(), 1, fleet.at()).lines());
        say("");
        for (SeasonPage season : fleet.seasons().pages()) {
            say(new SeasonText(season).lines());
            say("");
        }
        FittedCurves curves = reading(database, store -> new Memory(store, documents, InventedSeasons.YARD).curves());
        writePages(fleet.with(curves), run.resolve("pages"));
        return DONE;
    }

    private static Path newRun(Path output) throws IOException {
        Files.createDirectories(output);
        for (int number = 1; ; number++) {
            Path run = output.resolve(String.format(Locale.ROOT, "run-%04d", number));
            if (!Files.exists(run)) {
                return Files.createDirectory(run);
            }
        }
    }
}
