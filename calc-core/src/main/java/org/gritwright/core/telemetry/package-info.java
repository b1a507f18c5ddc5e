/**
 * From telemetry rows to what left the hopper: a truck's rows as columns of primitives, evaluated with the calibrations that were in
 * force, to whole milligrams (of a liquid microliters) and a status per row.
 *
 * <p>{@link org.gritwright.core.telemetry.Timeline} says what was in force when, with corrections backwards;
 * {@link org.gritwright.core.telemetry.RowEvaluator} is compiled from it once and holds plain arrays only;
 * {@link org.gritwright.core.telemetry.RowSums} are what it adds up, exact and additive.
 */
@NullMarked
package org.gritwright.core.telemetry;

import org.jspecify.annotations.NullMarked;
