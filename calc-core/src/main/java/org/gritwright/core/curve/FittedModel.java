package org.gritwright.core.curve;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/** A model that was fitted to catches. What it says about an opening costs the same however many catches there are. */
interface FittedModel {
    /**
     * What the model says about one x: an opening, or a shaft speed.
     *
     * @param y the discharge, or the flow
     * @param uncertainty its standard uncertainty by the scatter of the catches; none without a degree of freedom
     * @param degreesOfFreedom of that
     */
    record Value(double y, OptionalDouble uncertainty, int degreesOfFreedom) {}

    /** Whether anything is discharged at an x. */
    boolean discharges(double x);

    /** The value at an x at which something is discharged. */
    Value value(double x);

    int degreesOfFreedom();

    /**
     * What independent relative uncertainties of the catches contribute to that of a value.
     *
     * @param relative of each catch
     * @return the relative uncertainty by x
     */
    DoubleUnaryOperator relativeUncertainty(double[] relative);
}
