package org.gritwright.core.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * A minute of fuzzing: what the corpus holds, and seeded variations of it. {@code -Dgritwright.fuzz=} makes so many times as
 * many, {@code mvn -Pfuzz} goes on for hours and looks which bytes reach new code.
 */
class FuzzTest {
    private static final Path CORPUS = Path.of("src/test/resources/fuzz");
    private static final int TIMES = Integer.getInteger("gritwright.fuzz", 1);

    @Test
    @Tag("jackson")
    void whateverADocumentHoldsItIsRefusedOrComputedWrittenAndReadAgain() throws IOException {
        run("Document", 2500 * TIMES, 300, DocumentFuzz::fuzzerTestOneInput);
    }

    @Test
    @Tag("jackson")
    void whateverASeasonsAccountHoldsItIsRefusedOrASeason() throws IOException {
        run("Season", 4000 * TIMES, 300, SeasonFuzz::fuzzerTestOneInput);
    }

    @Test
    void whateverATextSaysItIsRefusedOrReadAsItStands() throws IOException {
        run("Text", 60_000 * TIMES, 60, TextFuzz::fuzzerTestOneInput);
    }

    @Test
    void whateverATypeAnswersOtherTrucksAreComputed() throws IOException {
        run("Type", 250 * TIMES, 600, TypeFuzz::fuzzerTestOneInput);
    }

    @Test
    void whateverAPumpOrAFlowMeterAnswersItIsRefusedOrAVolume() throws IOException {
        run("LiquidType", 700 * TIMES, 300, LiquidTypeFuzz::fuzzerTestOneInput);
    }

    private static void run(String corpus, int tries, int longest, Consumer<byte[]> target) throws IOException {
        List<byte[]> known = known(CORPUS.resolve(corpus));
        known.forEach(data -> one(data, target));
        SplittableRandom random = new SplittableRandom(20261019);
        for (int i = 0; i < tries; i++) {
            byte[] data = random.nextBoolean() ? known.get(random.nextInt(known.size())) : new byte[0];
            one(varied(data, longest, random), target);
        }
    }

    private static List<byte[]> known(Path folder) throws IOException {
        List<byte[]> known = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.sorted().toList()) {
                known.add(Files.readAllBytes(file));
            }
        }
        return Collections.unmodifiableList(known);
    }

    /** Some bytes as they were, others changed, and more of them after. */
    private static byte[] varied(byte[] data, int longest, SplittableRandom random) {
        byte[] varied = new byte[Math.min(longest, data.length + random.nextInt(longest))];
        random.nextBytes(varied);
        int changed = 1 + random.nextInt(40);
        for (int i = 0; i < Math.min(data.length, varied.length); i++) {
            if (random.nextInt(changed) > 0) {
                varied[i] = data[i];
            }
        }
        return varied;
    }

    private static void one(byte[] data, Consumer<byte[]> target) {
        try {
            target.accept(data);
        } catch (Throwable thrown) {
            throw new AssertionError(
                    "to be kept as a file of the corpus: " + HexFormat.of().formatHex(data), thrown);
        }
    }
}
