package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Reads documents on all processors, as many at a time as memory easily holds, and hands them on in the order in which they stand in files. */
final class Portions {
    /** So many bytes of documents are read at once, or a single one that is larger. */
    private static final long BYTES_AT_ONCE = 4 << 20;

    /** More of one file, nobody reads. */
    private static final int MOST_PROBLEMS = 1000;

    private final Taker taker;
    private final List<Waiting> waiting = new ArrayList<>();
    private final List<Refusals> files = new ArrayList<>();
    private long bytes;

    Portions(Taker taker) {
        this.taker = taker;
    }

    /** Takes what was read. */
    interface Taker {
        void take(Arrival one) throws BadInputException;
    }

    /** A document that can be read at any time, by any thread. */
    interface Piece {
        List<? extends Arrival> read() throws IOException, BadInputException;
    }

    /** Why a file can't be used. */
    private static final class Refusals {
        private final String file;
        private final List<String> lines = new ArrayList<>();
        private long more;

        Refusals(String file) {
            this.file = file;
        }

        void add(List<String> problems) {
            int fitting = Math.min(problems.size(), MOST_PROBLEMS - lines.size());
            lines.addAll(problems.subList(0, fitting));
            more += problems.size() - fitting;
        }

        List<String> told() {
            List<String> told = new ArrayList<>(lines);
            if (more > 0) {
                told.add("and " + Words.count(more, "more line") + " about " + file);
            }
            return told;
        }
    }

    private record Waiting(Refusals file, Piece piece) {
        Outcome outcome() {
            try {
                return new Outcome(file, piece.read(), List.of());
            } catch (BadInputException e) {
                return new Outcome(file, List.of(), e.lines());
            } catch (IOException e) {
                return new Outcome(file, List.of(), List.of("can't read " + file.file + ": " + Failure.words(e)));
            }
        }
    }

    /** What was read, or why it can't be. */
    private record Outcome(Refusals file, List<? extends Arrival> arrivals, List<String> problems) {}

    /** Begins a file. */
    void begin(String file) {
        files.add(new Refusals(file));
    }

    /** Takes a document of the file that was begun last, and reads it sooner or later. */
    void add(long itsBytes, Piece piece) throws BadInputException {
        waiting.add(new Waiting(now(), piece));
        bytes += itsBytes;
        if (bytes >= BYTES_AT_ONCE) {
            read();
        }
    }

    /** Refuses the file that was begun last as a whole; what its documents are is of no matter then. */
    void refuse(List<String> lines) throws BadInputException {
        read();
        Refusals file = now();
        file.lines.clear();
        file.more = 0;
        file.add(lines);
    }

    private Refusals now() {
        return files.get(files.size() - 1);
    }

    private void read() throws BadInputException {
        List<Outcome> outcomes = waiting.parallelStream().map(Waiting::outcome).toList();
        waiting.clear();
        bytes = 0;
        for (Outcome one : outcomes) {
            one.file().add(one.problems());
            for (Arrival arrival : one.arrivals()) {
                taker.take(arrival);
            }
        }
    }

    /** Reads what is still waiting, and tells every reason why some of it all can't be used. */
    void end() throws BadInputException {
        read();
        List<String> problems =
                files.stream().flatMap(file -> file.told().stream()).toList();
        if (!problems.isEmpty()) {
            throw new BadInputException(problems);
        }
    }
}
