package org.gritwright.core.curve;

import java.util.Optional;
import org.gritwright.core.statistics.CurveFit;
import org.gritwright.core.statistics.LackOfFit;

/** Catches along what is set, a gate opening or a shaft speed: what {@link ModelFits} fits, tests and chooses by. */
interface FittedData {
    /**
     * A fit of a model that has a shape.
     *
     * @throws org.gritwright.units.InvalidInputException if the catches give none
     */
    CurveFit fit(CurveModel model);

    /** The lack-of-fit test of a fit; none where none can be made. */
    Optional<LackOfFit> test(CurveFit fit);

    /** How far the worst group's mean is from a curve, relative. */
    double worstMisfit(CurveFit fit);

    /** The least x − x₀ at which the shape has a value. */
    double lowestLimit();

    /** The greatest. */
    double highestLimit();
}
