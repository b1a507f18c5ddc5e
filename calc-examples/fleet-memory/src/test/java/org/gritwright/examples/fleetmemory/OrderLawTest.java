package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.gritwright.core.record.CalibrationRecord;

/** In whichever order and portions documents come, a database holds the same. */
class OrderLawTest {
    private static final List<Filed> SOME = some();

    /** Days, events, and records that come a second time with a signature. */
    private static List<Filed> some() {
        List<Filed> some = new ArrayList<>(Fixtures.all().subList(0, 12));
        try {
            for (CalibrationRecord record :
                    Fixtures.records(Fixtures.FLEET.days().get(0))) {
                some.add(Fixtures.filed(Fixtures.signed(record, "R. Alder")));
            }
        } catch (BadInputException e) {
            throw new AssertionError(e);
        }
        return some;
    }

    @Provide
    Arbitrary<List<Filed>> orders() {
        return Arbitraries.shuffle(SOME);
    }

    @Property(tries = 15)
    void theOrderDoesntMatter(@ForAll("orders") List<Filed> order, @ForAll int seed) throws Exception {
        Path folder = Files.createTempDirectory("fleet-memory");
        Path file = folder.resolve("fleet.db");
        Path expected = folder.resolve("expected.db");
        try {
            Fixtures.keep(Database.of(expected.toString()), SOME);
            int cut = Math.floorMod(seed, order.size() + 1);
            Fixtures.keep(Database.of(file.toString()), order.subList(0, cut));
            Fixtures.keep(Database.of(file.toString()), order.subList(cut, order.size()));

            assertThat(Fixtures.export(Database.of(file.toString())))
                    .isEqualTo(Fixtures.export(Database.of(expected.toString())));
        } finally {
            Files.deleteIfExists(file);
            Files.deleteIfExists(expected);
            Files.deleteIfExists(folder);
        }
    }
}
