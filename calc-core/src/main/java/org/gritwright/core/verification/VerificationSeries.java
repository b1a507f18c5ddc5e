package org.gritwright.core.verification;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * Verification catches made with one calibration in force, judged together: what one catch can't tell, several may. Their
 * error is Σ indicated ÷ Σ caught − 1, or Σ caught ÷ Σ expected − 1 where nothing was counted or displayed. Immutable,
 * thread-safe.
 */
public final class VerificationSeries {
    private final List<Verification> verifications;
    private final double error;
    private final Judgement judgement;

    private VerificationSeries(List<Verification> verifications) {
        this.verifications = List.copyOf(verifications);
        if (this.verifications.isEmpty()) {
            throw new InvalidInputException("verification catches to judge together", "one or more", "none");
        }
        Verification last = last();
        for (Verification one : this.verifications) {
            if (!one.source().inForce().equals(last.source().inForce()) || isCounted(one) != isCounted(last)) {
                throw new InvalidInputException(
                        "verification catches to judge together",
                        "made with one calibration in force, and all counted or none",
                        "another one");
            }
        }
        double wanted = sum(isCounted(last) ? Part.INDICATED : Part.CAUGHT);
        this.error = wanted / sum(isCounted(last) ? Part.CAUGHT : Part.EXPECTED) - 1;
        this.judgement = this.verifications.size() == 1 ? last.judgement() : judgedTogether();
    }

    private Judgement judgedTogether() {
        Verification last = last();
        ErrorBudget errors = new ErrorBudget(
                verifications.stream().map(Verification::source).toList(),
                verifications.stream().mapToDouble(Verification::judgedError).toArray(),
                error,
                last.calibration(),
                last.allowances());
        Quantity<Mass> caught = last.source().caught().total();
        double mean =
                sum(Part.CAUGHT) / verifications.size() / last.allowances().spillageFactor();
        return Judgement.of(
                errors, last.judgement().rule(), last.judgement().tolerance(), Amounts.ofSi(mean, caught.getUnit()));
    }

    private enum Part {
        INDICATED,
        CAUGHT,
        EXPECTED
    }

    /**
     * Judges catches together.
     *
     * @param verifications one or more, in the order of time, made with one calibration in force; the decision rule, the
     *     tolerance and the calibration catches are those of the last
     * @return the series
     * @throws InvalidInputException if there is none, they were made with different calibrations, or only some were
     *     counted or displayed
     */
    public static VerificationSeries of(List<Verification> verifications) {
        return new VerificationSeries(verifications);
    }

    private static boolean isCounted(Verification verification) {
        return verification.calibrationError().isPresent();
    }

    private double sum(Part part) {
        return verifications.stream()
                .mapToDouble(v -> switch (part) {
                    case INDICATED -> v.indicatedKilograms();
                    case CAUGHT -> v.dischargedKilograms();
                    case EXPECTED -> v.expectedKilograms();
                })
                .sum();
    }

    /**
     * The catches.
     *
     * @return the catches, as given
     */
    public List<Verification> verifications() {
        return verifications;
    }

    /**
     * The last catch.
     *
     * @return the last in the order of time
     */
    public Verification last() {
        return verifications.get(verifications.size() - 1);
    }

    /**
     * What the catches say together of the error, the tolerance, and what to do.
     *
     * @return the judgement; of a single catch its own
     */
    public Judgement judgement() {
        return judgement;
    }

    /**
     * The mass per revolution by these catches.
     *
     * @return Σ caught ÷ Σ revolutions, as uncertain relative to itself as the error is to 1 + error, in lb/rev or kg/rev as
     *     was weighed; none if nothing was counted or displayed
     */
    public Optional<Measured<DischargePerRevolution>> dischargePerRevolution() {
        if (!isCounted(last())) {
            return Optional.empty();
        }
        Unit<DischargePerRevolution> unit = UnitSymbol.tradeUnit(
                DischargePerRevolution.class,
                UnitSymbol.of(last().source().caught().total().getUnit()).system());
        return Optional.of(judgement.discharge(kilogramsPerRevolution(), Set.of(), unit));
    }

    private double kilogramsPerRevolution() {
        double revolutions = verifications.stream()
                .mapToDouble(v -> v.source().revolutions().orElseThrow())
                .sum();
        return sum(Part.CAUGHT) / revolutions;
    }

    /**
     * The correction that these catches call for.
     *
     * @return the correction by all of them; none if the last catch's {@link Verification#proposedCorrection} is none
     */
    public Optional<Correction> proposedCorrection() {
        return verifications.size() == 1
                ? last().proposedCorrection()
                : last().proposedCorrection()
                        .map(single -> last().correction(
                                        kilogramsPerRevolution(), Correction.Basis.SEVERAL_CATCHES, judgement));
    }

    /**
     * The error.
     *
     * @return in per cent
     */
    public Quantity<Dimensionless> error() {
        return Amounts.ofSi(error, SpreadingUnits.PERCENT);
    }
}
