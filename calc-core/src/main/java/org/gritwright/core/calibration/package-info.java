/** Calibration catches become a discharge per revolution, and that a value for a display. */
package org.gritwright.core.calibration;
