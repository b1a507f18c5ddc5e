/**
 * Whether what leaves a truck per revolution changes over the years: the discharge that each calibration and verification implies, freed from
 * what successive ones share, on control charts, with a straight line through it and when that line leaves the tolerance.
 */
@NullMarked
package org.gritwright.core.history.drift;

import org.jspecify.annotations.NullMarked;
