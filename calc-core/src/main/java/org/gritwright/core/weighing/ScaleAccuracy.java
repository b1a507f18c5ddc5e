package org.gritwright.core.weighing;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/** How far a scale's reading may be off beyond its division. Implementations are immutable values. */
public sealed interface ScaleAccuracy {
    /**
     * The limit of the error of a reading.
     *
     * @param load the load, 0 or more
     * @param division the scale's division, greater than 0
     * @return kilograms, 0 or more
     * @throws org.gritwright.units.InvalidInputException if the load is beyond the table of the scale's class
     */
    double limitKilograms(Quantity<Mass> load, Quantity<Mass> division);

    /**
     * As its maker or its certificate states it.
     *
     * @param ofReading the limit as a part of the reading, greater than 0 and below 100 %
     */
    record Stated(Quantity<Dimensionless> ofReading) implements ScaleAccuracy {
        /**
         * Checks the value.
         *
         * @throws org.gritwright.units.InvalidInputException if it is out of its range
         */
        public Stated {
            Require.fraction("stated accuracy of a scale", ofReading);
        }

        @Override
        public double limitKilograms(Quantity<Mass> load, Quantity<Mass> division) {
            return Amounts.si(Dimensionless.class, ofReading) * Amounts.si(Mass.class, load);
        }
    }

    /**
     * By the class on its plate.
     *
     * @param accuracyClass the class
     * @param stage which of the two tolerances
     */
    record OfClass(AccuracyClass accuracyClass, AccuracyClass.Stage stage) implements ScaleAccuracy {
        /** Checks that both are given. */
        public OfClass {
            Require.given(OfClass.class, accuracyClass, stage);
        }

        @Override
        public double limitKilograms(Quantity<Mass> load, Quantity<Mass> division) {
            double kilograms = Amounts.si(Mass.class, division);
            return accuracyClass.tolerance(Amounts.si(Mass.class, load) / kilograms, stage) * kilograms;
        }
    }
}
