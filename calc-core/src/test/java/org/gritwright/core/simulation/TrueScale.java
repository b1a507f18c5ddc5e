package org.gritwright.core.simulation;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.measure.quantity.Mass;
import org.gritwright.core.weighing.AccuracyClass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.core.weighing.ScaleCheck;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * A scale and what nobody knows of it: its span error, with equal chances anywhere within what its class or its maker states.
 *
 * @param entry as it is written down
 * @param span by how much it shows too much, a ratio
 * @param division in the truck's unit of mass
 */
record TrueScale(Kind kind, Scale entry, double span, double division) {
    /** How far the span of a scale may be off of which nobody knows anything (from experience, no source). */
    static final double UNKNOWN_SPAN = 0.01;

    private static final double CHECKED = 0.6;

    /** Five kinds of scale, with the masses that are usually caught on them. */
    enum Kind {
        /** Pails on a bench scale of Handbook 44's class III. */
        BENCH(500, 0.1, 80, 300, 4, 3, 6),
        /** A tarp under a hanging scale. */
        HANGING(2000, 0.5, 200, 900, 1, 8, 20),
        /** A pallet box on a floor scale of class III. */
        PLATFORM(5000, 1, 300, 1500, 1, 60, 90),
        /** A loader bucket or pickup on a vehicle scale of class III L. */
        VEHICLE(80_000, 20, 2000, 6000, 1, 5000, 8000),
        /** Tubs on a farm scale of which nobody knows how good it is. */
        FARM(600, 0.5, 100, 400, 3, 5, 12);

        final double capacity;
        final double division;
        final double lightest;
        final double heaviest;
        final int containers;
        final double lightestTare;
        final double heaviestTare;

        /** Masses in pounds. */
        Kind(
                double capacity,
                double division,
                double lightest,
                double heaviest,
                int containers,
                double lightestTare,
                double heaviestTare) {
            this.capacity = capacity;
            this.division = division;
            this.lightest = lightest;
            this.heaviest = heaviest;
            this.containers = containers;
            this.lightestTare = lightestTare;
            this.heaviestTare = heaviestTare;
        }

        private Optional<ScaleAccuracy> accuracy() {
            return switch (this) {
                case BENCH, PLATFORM ->
                    Optional.of(new ScaleAccuracy.OfClass(AccuracyClass.HB44_III, AccuracyClass.Stage.IN_SERVICE));
                case HANGING -> Optional.of(new ScaleAccuracy.Stated(Amounts.of(0.3, SpreadingUnits.PERCENT)));
                case VEHICLE ->
                    Optional.of(new ScaleAccuracy.OfClass(AccuracyClass.HB44_IIIL, AccuracyClass.Stage.IN_SERVICE));
                case FARM -> Optional.empty();
            };
        }
    }

    static TrueScale draw(Draw draw, Trade trade, String truck, LocalDate day) {
        Kind kind = draw.of(List.of(Kind.values()));
        double unit = trade == Trade.US ? 1 : 0.5;
        Scale entry = Scale.of(
                kind.name().toLowerCase(Locale.ROOT) + " of " + truck,
                Amounts.of(kind.capacity * unit, trade.mass),
                Amounts.of(kind.division * unit, trade.mass));
        Scale known = kind.accuracy().map(entry::withAccuracy).orElse(entry);
        double limit = limit(known, (kind.lightest + kind.heaviest) / 2 * unit / kind.containers, trade);
        double span = draw.uniform(-limit, limit);
        TrueScale scale = new TrueScale(kind, known, span, kind.division * unit);
        return draw.chance(CHECKED) ? scale.checked(trade, day) : scale;
    }

    private static double limit(Scale scale, double load, Trade trade) {
        return scale.accuracy()
                .map(accuracy -> accuracy.limitKilograms(Amounts.of(load, trade.mass), scale.division())
                        / Amounts.si(Mass.class, Amounts.of(load, trade.mass)))
                .orElse(UNKNOWN_SPAN);
    }

    /** With a test weight near the usual load. */
    private TrueScale checked(Trade trade, LocalDate day) {
        double weight =
                Trade.written((kind.lightest + kind.heaviest) / 2 / kind.containers, 10) * division / kind.division;
        ScaleCheck check = new ScaleCheck(day, Amounts.of(weight, trade.mass), Amounts.of(reading(weight), trade.mass));
        return new TrueScale(kind, entry.checked(check), span, division);
    }

    /** What it shows for a mass in the truck's unit. */
    double reading(double mass) {
        return Trade.written(mass * (1 + span), division);
    }
}
