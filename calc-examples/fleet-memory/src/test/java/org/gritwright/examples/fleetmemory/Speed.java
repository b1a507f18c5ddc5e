package org.gritwright.examples.fleetmemory;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.gritwright.core.judgement.Tolerance;

/** How long 30 years of 200 trucks take; run by hand, with a new folder. Prints seconds. */
final class Speed {
    private static final InventedSeasons YEARS = new InventedSeasons(200, 1996, 30, 1, 3);

    private Speed() {}

    public static void main(String[] arguments) throws Exception {
        Path folder = Path.of(arguments[0]);
        String database =
                arguments.length > 1 ? arguments[1] : folder.resolve("fleet.db").toString();
        YEARS.write(folder.resolve("documents"));
        List<String> files = new ArrayList<>(List.of("import", "--database", database));
        try (Stream<Path> all = Files.list(folder.resolve("documents"))) {
            all.map(Path::toString).sorted().forEach(files::add);
        }
        time(files.toArray(String[]::new));
        for (int i = 0; i < 12; i++) {
            time("truck", "C-07", "--database", database, "--on", "2026-02-01");
        }
        time("due", "--database", database, "--on", "2026-02-01");
        time("drift", "--database", database, "--on", "2026-02-01");
        time(
                "pages",
                "--database",
                database,
                "--on",
                "2026-02-01",
                "--output",
                folder.resolve("pages").toString());
        pages(Database.of(database));
        time("check", "--database", database);
        time("backup", "--database", database, folder.resolve("backup.jsonl").toString());
        time(
                "restore",
                "--database",
                folder.resolve("again.db").toString(),
                folder.resolve("backup.jsonl").toString());
    }

    /** Each truck's page by itself, once what all pages share is computed; seconds of the processor, as other programs run too. */
    private static void pages(Database database) throws Exception {
        Overview fleet =
                Overview.of(PagesTest.history(database), Tolerance.percent(4), 1, List.of(), LocalDate.of(2026, 2, 1));
        Templates templates = Templates.read();
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        for (String when : List.of("first", "again")) {
            List<Double> seconds = new ArrayList<>();
            for (TruckOverview truck : fleet.trucks()) {
                long start = threads.getCurrentThreadCpuTime();
                TruckPage.html(truck, templates);
                seconds.add((threads.getCurrentThreadCpuTime() - start) / 1e9);
            }
            seconds.sort(null);
            System.out.printf(
                    Locale.ROOT,
                    "a page   %s: median %.3f s, slowest %.3f s%n",
                    when,
                    seconds.get(seconds.size() / 2),
                    seconds.get(seconds.size() - 1));
        }
    }

    private static void time(String... arguments) {
        StringWriter out = new StringWriter();
        long start = System.nanoTime();
        int code =
                FleetMemoryCommand.run(new PrintWriter(out), new PrintWriter(out), LocalDate.of(2026, 2, 1), arguments);
        System.out.printf(
                Locale.ROOT,
                "%-8s %d  %6.2f s  %s%n",
                arguments[0],
                code,
                (System.nanoTime() - start) / 1e9,
                out.toString().lines().findFirst().orElse(""));
    }
}
