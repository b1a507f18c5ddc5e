package org.gritwright.core.history.due;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.Held;
import org.gritwright.core.history.Standing;
import org.gritwright.core.history.What;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.statistics.Student;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.DischargePerRevolution;

/** The least work that clears reasons. */
final class LeastWork {
    private static final double COVERAGE = 0.95;

    /** More catches than this nobody makes. */
    static final int MOST = 10;

    /** An interval that is within the tolerance but for rounding is within it. */
    private static final double ROUNDING = 1e-9;

    private LeastWork() {}

    static Work of(Held held, List<Reason> reasons, Tolerance tolerance, Optional<Event> lastCaught) {
        CalibrationPoint point = held.value().point();
        boolean calibrate = reasons.stream().anyMatch(reason -> reason.rule().clearedBy() == ClearedBy.CALIBRATION);
        // Since a change nobody knows, and what was found wrong is corrected first.
        double error = held.standing() == Standing.CHANGED_SINCE || held.standing() == Standing.WRONG
                ? 0
                : held.error()
                        .map(one -> Math.abs(Amounts.si(Dimensionless.class, one.value())))
                        .orElse(0.0);
        if (calibrate) {
            return new Work.Calibrate(proof(0, tolerance, lastCaught, point));
        }
        // A value that nobody checked may be another than the one that was calibrated.
        return held.standing() == Standing.WRONG
                        || (held.standing() == Standing.NOT_CHECKED && error > tolerance.ratio())
                ? new Work.Correct(corrected(held), proof(0, tolerance, lastCaught, point))
                : proof(error, tolerance, lastCaught, point);
    }

    /** By what is known to be off, as a correction computes it. */
    private static CalibrationFactor corrected(Held held) {
        CalibrationInForce value = held.value();
        double off = Amounts.si(Dimensionless.class, held.error().orElseThrow().value());
        CalibrationFactor computed =
                value.factor().withDischarge(value.kilogramsPerRevolution() / (1 + off), value.point());
        return value.displayStep().map(computed::roundedTo).orElse(computed);
    }

    /**
     * How many catches like the last ones leave an interval of 95 % about an error that is wholly within the tolerance: what the catches
     * share, no number reduces, and the rest falls with the square root of their number.
     */
    static Work.Proof proof(double error, Tolerance tolerance, Optional<Event> lastCaught, CalibrationPoint point) {
        Optional<Caught> like = lastCaught.flatMap(event -> Caught.of(event.what()));
        if (like.isEmpty()) {
            return new Work.Verify(1, Optional.empty());
        }
        Caught one = like.get();
        double room = (tolerance.ratio() - error)
                / Student.of(Double.POSITIVE_INFINITY).coverageFactor(COVERAGE);
        for (int catches = 1; catches <= MOST; catches++) {
            if (one.uncertaintyOf(catches) <= room * (1 + ROUNDING)) {
                return new Work.Verify(catches, one.each.map(point::asCaught));
            }
        }
        return new Work.PlanAnew();
    }

    /** How uncertain one catch is, like the last ones were. */
    private record Caught(double own, double shared, Optional<Quantity<Mass>> each) {
        static Optional<Caught> of(What what) {
            if (what instanceof What.Verified verified) {
                double grown =
                        1 + Amounts.si(Dimensionless.class, verified.error().value());
                return relative(verified.error(), Dimensionless.class, grown)
                        .map(u -> of(
                                u,
                                verified.shared(),
                                verified.catches(),
                                Optional.of(Amounts.ofSi(
                                        Amounts.si(Mass.class, verified.caught()) / verified.catches(),
                                        verified.caught().getUnit()))));
            }
            What.Calibrated known = (What.Calibrated) what;
            double discharge =
                    Amounts.si(DischargePerRevolution.class, known.discharge().value());
            return relative(known.discharge(), DischargePerRevolution.class, discharge)
                    .map(u -> of(u, known.shared(), known.catches(), Optional.empty()));
        }

        /** Of so many catches together. */
        double uncertaintyOf(int catches) {
            return Math.hypot(shared, own / Math.sqrt(catches));
        }

        private static <Q extends Quantity<Q>> Optional<Double> relative(
                Measured<Q> measured, Class<Q> kind, double value) {
            return measured.standardUncertainty().map(u -> Amounts.si(kind, u) / value);
        }

        private static Caught of(double total, List<SharedError> shared, int catches, Optional<Quantity<Mass>> each) {
            double common = 0;
            for (SharedError error : shared) {
                double u = Amounts.si(Dimensionless.class, error.standardUncertainty());
                common += u * u;
            }
            return new Caught(Math.sqrt(Math.max(0, total * total - common) * catches), Math.sqrt(common), each);
        }
    }
}
