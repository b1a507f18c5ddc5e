/** Calibration catches become a discharge per revolution, and that a value for a display. */
@NullMarked
package org.gritwright.core.calibration;

import org.jspecify.annotations.NullMarked;
