package org.gritwright.core.record;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.gritwright.core.season.CommonError;
import org.gritwright.core.season.StatedMass;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Any season's account that contradicts itself nowhere, sensible or not. */
final class WrittenSeasons {
    private static final int NAMES = 60;

    private WrittenSeasons() {}

    static Arbitrary<WrittenSeason> any() {
        return Combinators.combine(
                        FleetDays.texts().list().ofSize(NAMES).uniqueElements(),
                        masses().list().ofMinSize(1).ofMaxSize(40),
                        FleetDays.dates(),
                        Arbitraries.randoms())
                .as((names, masses, from, random) -> new Made(names, masses, from, random).season());
    }

    private static Arbitrary<Quantity<Mass>> masses() {
        return FleetDays.quantities(Mass.class)
                .map(mass -> Amounts.of(Math.abs(mass.getValue().doubleValue()), mass.getUnit()))
                .filter(mass -> mass.getValue().doubleValue() < 1e300);
    }

    /** Names, masses and a source of days, in a season that is made of them. */
    private static final class Made {
        private final List<String> names;
        private final List<Quantity<Mass>> masses;
        private final LocalDate from;
        private final int days;
        private final Random random;
        private int name;

        Made(List<String> names, List<Quantity<Mass>> masses, LocalDate from, Random random) {
            this.names = names;
            this.masses = masses;
            this.from = from;
            this.random = random;
            this.days = 1 + random.nextInt(200);
        }

        private String name() {
            name = (name + 1) % names.size();
            return names.get(name);
        }

        private Quantity<Mass> mass() {
            return masses.get(random.nextInt(masses.size()));
        }

        private Quantity<Mass> tons() {
            return Amounts.of(1 + random.nextInt(500), SpreadingUnits.SHORT_TON);
        }

        private Quantity<Dimensionless> percent() {
            return Amounts.of((1 + random.nextInt(90)) / 8.0, SpreadingUnits.PERCENT);
        }

        /** Each scale has an uncertainty of its own. */
        private Optional<CommonError> shared() {
            int which = random.nextInt(6);
            return which > 2
                    ? Optional.empty()
                    : Optional.of(
                            new CommonError("scale " + which, Amounts.of(0.5 * (which + 1), SpreadingUnits.PERCENT)));
        }

        private StatedMass stated() {
            return new StatedMass(mass(), tons(), shared());
        }

        private LocalDate day(int last) {
            return from.plusDays(random.nextInt(last + 1));
        }

        private <T> List<T> some(int most, java.util.function.Supplier<T> one) {
            List<T> some = new ArrayList<>();
            int count = random.nextInt(most + 1);
            for (int i = 0; i < count; i++) {
                some.add(one.get());
            }
            return some;
        }

        WrittenSeason season() {
            List<WrittenPile> piles = some(3, this::pile);
            return new WrittenSeason(name(), from, from.plusDays(days), piles, some(3, () -> truck(piles)));
        }

        private WrittenPile pile() {
            List<WrittenPile.Survey> surveys = new ArrayList<>();
            for (int day = random.nextInt(days + 1); day <= days; day += 1 + random.nextInt(90)) {
                surveys.add(new WrittenPile.Survey(from.plusDays(day), stated()));
            }
            int last = (int) java.time.temporal.ChronoUnit.DAYS.between(
                    from, surveys.get(surveys.size() - 1).on());
            return new WrittenPile(
                    name(),
                    name(),
                    stated(),
                    surveys,
                    some(6, () -> new WrittenPile.Ticket(name(), day(last), stated())),
                    some(2, () -> new WrittenPile.Use(name(), day(last), stated())),
                    random.nextBoolean() ? Optional.empty() : Optional.of(tons()));
        }

        private WrittenTruckSeason truck(List<WrittenPile> piles) {
            List<WrittenTruckSeason.Drawn> draws = new ArrayList<>();
            for (WrittenPile pile : piles) {
                LocalDate first = from;
                for (WrittenPile.Survey survey : pile.surveys()) {
                    if (random.nextBoolean()) {
                        draws.add(new WrittenTruckSeason.Drawn(
                                pile.id(),
                                first,
                                random.nextBoolean() ? survey.on() : first,
                                Optional.of(mass()),
                                random.nextBoolean()
                                        ? WrittenTruckSeason.Source.CONTROLLER
                                        : WrittenTruckSeason.Source.TELEMETRY));
                    }
                    first = survey.on().plusDays(1);
                }
            }
            return new WrittenTruckSeason(
                    name(),
                    random.nextBoolean()
                            ? Optional.empty()
                            : Optional.of(new WrittenTruckSeason.CalibrationError(percent(), percent(), shared())),
                    draws,
                    random.nextBoolean()
                            ? List.of()
                            : List.of(new WrittenTruckSeason.Loads(
                                    from, day(days), new StatedMass(tons(), tons(), shared()), tons())));
        }
    }
}
