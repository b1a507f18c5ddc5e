package org.gritwright.core.curve;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.gritwright.core.spi.Setting;

/** A model that was fitted to catches. What it says about an opening costs the same however many catches there are. */
interface FittedModel {
    String ABOVE_CLOSED = "above the closed position";

    /**
     * What the model says about one opening.
     *
     * @param kilogramsPerRevolution the discharge
     * @param uncertainty its standard uncertainty by the scatter of the catches; none without a degree of freedom
     * @param degreesOfFreedom of that
     */
    record Value(double kilogramsPerRevolution, OptionalDouble uncertainty, int degreesOfFreedom) {}

    /**
     * The value at a setting.
     *
     * @param setting the setting, for messages
     * @param at the same as a number
     * @throws org.gritwright.units.InvalidInputException if nothing is discharged there
     */
    Value value(Setting setting, double at);

    int degreesOfFreedom();

    /**
     * What independent relative uncertainties of the catches contribute to that of a value.
     *
     * @param relative of each catch
     * @return the relative uncertainty by the opening
     */
    DoubleUnaryOperator relativeUncertainty(double[] relative);
}
