package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.number;
import static org.gritwright.core.finding.Argument.time;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.range.RangeEnd;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * Verification catches that asked for a shaft speed which the drive doesn't hold, where that explains what was delivered. What is left
 * once the limit is taken off is judged as delivery is: by the day's tolerance, as finely as the limit and the count are known.
 */
final class DriveLimits {
    /** Standard uncertainties of a count, as in a verification (common practice, no source). */
    private static final double COVERED = 2;

    /**
     * What a limit makes of a catch.
     *
     * @param finding what to say
     * @param wholly whether nothing else has to be looked for
     */
    record Explained(Finding finding, boolean wholly) {}

    private final IdentityHashMap<Verification, Explained> explained = new IdentityHashMap<>();

    DriveLimits(Optional<DriveAssessment> drive, List<Verification> verifications) {
        drive.ifPresent(known -> {
            for (Verification one : verifications) {
                explanation(known, one).ifPresent(found -> explained.put(one, found));
            }
        });
    }

    Optional<Explained> of(Verification verification) {
        return Optional.ofNullable(explained.get(verification));
    }

    boolean isExplained(Verification verification) {
        return of(verification).filter(Explained::wholly).isPresent();
    }

    private static Optional<Explained> explanation(DriveAssessment drive, Verification verification) {
        double asked = CatchSpeeds.asked(verification.source());
        boolean shortfall = has(verification, FindingCode.SHORTFALL);
        if (!shortfall && !has(verification, FindingCode.OVERRUN)) {
            return Optional.empty();
        }
        return (shortfall ? drive.highest() : drive.lowest())
                .filter(end -> shortfall ? asked > DriveCheck.si(end.speed()) : asked < DriveCheck.si(end.speed()))
                .flatMap(end -> explanation(end, asked, verification, shortfall));
    }

    private static boolean has(Verification verification, FindingCode code) {
        return verification.findings().stream().anyMatch(found -> found.code() == code);
    }

    private static Optional<Explained> explanation(
            RangeEnd end, double asked, Verification verification, boolean shortfall) {
        double share = DriveCheck.si(end.speed()) / asked;
        double delivered = 1 + Amounts.si(Dimensionless.class, verification.deliveryError());
        double rest = delivered / share - 1;
        double known = DriveCheck.si(end.allowance()) / DriveCheck.si(end.speed())
                + COVERED * ofCounting(verification.source())
                + (verification.calibrationError().isPresent()
                        ? 0
                        : Amounts.si(
                                Dimensionless.class, verification.tolerance().limit()));
        boolean wholly = verification.tolerance().acceptsRatio(Math.max(0, Math.abs(rest) - known));
        if (!wholly && (shortfall ? rest > 0 : rest < 0)) {
            // It turned beyond the limit, which then explains nothing.
            return Optional.empty();
        }
        Quantity<RotationalSpeed> needed = Amounts.ofSi(asked, SpreadingUnits.REVOLUTION_PER_MINUTE);
        Map<String, Argument> about = Map.of(
                "at", time(verification.source().observation().at()),
                "needed", number(needed),
                "holds", number(end.speed()),
                "limit", number(percent(Math.abs(share - 1))),
                "error", number(percent(Math.abs(delivered - 1))));
        FindingCode whole = shortfall ? FindingCode.LIMIT_EXPLAINS_SHORTFALL : FindingCode.LIMIT_EXPLAINS_OVERRUN;
        return Optional.of(new Explained(Finding.of(wholly ? whole : FindingCode.LIMIT_EXPLAINS_PART, about), wholly));
    }

    /** The relative standard uncertainty of what says how far the shaft turned. */
    private static double ofCounting(VerificationCatch made) {
        if (made.counted().isPresent()) {
            return made.observation().uncertaintyRevolutions().orElse(0)
                    / made.observation().revolutions().orElseThrow();
        }
        return made.indicated().map(display -> display.relativeResolution() / 2).orElse(0.0);
    }

    private static Quantity<Dimensionless> percent(double ratio) {
        return Amounts.ofSi(ratio, SpreadingUnits.PERCENT);
    }
}
