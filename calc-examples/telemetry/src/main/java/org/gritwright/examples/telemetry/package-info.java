/**
 * A season's telemetry on Apache Spark: what each truck laid, when and where, and how sure that is. Start at
 * {@link org.gritwright.examples.telemetry.SeasonCommand}.
 */
@NullMarked
package org.gritwright.examples.telemetry;

import org.jspecify.annotations.NullMarked;
