package org.gritwright.core.curve;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.statistics.CurveFit;
import org.gritwright.core.statistics.LackOfFit;
import org.gritwright.units.InvalidInputException;

/**
 * The fits of some catches, each made once, when it is first asked for; and the choice among the models. Not
 * thread-safe: it lives only while a curve is made.
 */
final class ModelFits {
    /** How often catches that are right would be called a misfit of the model. */
    static final double MISFIT_CHANCE = 0.05;

    /** A model's shape is given up for a table only where a misfit is hardly chance, and large: common practice, no source. */
    private static final double TABLE_CHANCE = 0.01;

    private static final double LARGE_MISFIT = 0.02;

    private final FittedData data;
    private final Map<CurveModel, Optional<CurveFit>> fits = new EnumMap<>(CurveModel.class);
    private final Map<CurveModel, Optional<LackOfFit>> tests = new EnumMap<>(CurveModel.class);

    ModelFits(FittedData data) {
        this.data = data;
    }

    /**
     * The fit of a model that has one.
     *
     * @throws InvalidInputException if the catches give none
     */
    CurveFit of(CurveModel model) {
        // A fit that failed once fails again, and says why.
        return ifAny(model).orElseGet(() -> data.fit(model));
    }

    /** The fit, or none for a table, and where the catches give none, as a discharge that doesn't rise. */
    Optional<CurveFit> ifAny(CurveModel model) {
        return fits.computeIfAbsent(model, this::fit);
    }

    private Optional<CurveFit> fit(CurveModel model) {
        if (model == CurveModel.TABLE) {
            return Optional.empty();
        }
        try {
            return Optional.of(data.fit(model));
        } catch (InvalidInputException e) {
            return Optional.empty();
        }
    }

    /** The lack-of-fit test of a model; none where none can be made. */
    Optional<LackOfFit> test(CurveModel model) {
        return tests.computeIfAbsent(model, m -> ifAny(m).flatMap(data::test));
    }

    private boolean isRefused(CurveModel model, double chance) {
        return test(model).filter(t -> t.chance() < chance).isPresent();
    }

    /** How far the worst group's mean is from a curve that the test refuses, relative; 0 where it doesn't. */
    double misfit(CurveModel model) {
        return isRefused(model, MISFIT_CHANCE) ? data.worstMisfit(of(model)) : 0;
    }

    /** Whether the models can be told apart by test. */
    boolean isTestable() {
        of(CurveModel.PROPORTIONAL);
        return test(CurveModel.PROPORTIONAL).isPresent();
    }

    /** The first shape that the test doesn't refuse; the last one where it refuses both. */
    CurveModel shape() {
        return isRefused(CurveModel.PROPORTIONAL, MISFIT_CHANCE)
                        && ifAny(CurveModel.DEAD_OPENING).isPresent()
                ? CurveModel.DEAD_OPENING
                : CurveModel.PROPORTIONAL;
    }

    /** The first model that the test doesn't refuse; a table only where it refuses all for a large misfit. */
    CurveModel chosen() {
        CurveModel shape = shape();
        return isRefused(shape, TABLE_CHANCE) && misfit(shape) > LARGE_MISFIT ? CurveModel.TABLE : shape;
    }
}
