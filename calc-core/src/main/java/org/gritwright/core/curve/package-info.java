/**
 * Discharge per revolution as a function of the gate opening, and a pump's volume per revolution as a function of its shaft's speed,
 * from catches at several.
 */
@NullMarked
package org.gritwright.core.curve;

import org.jspecify.annotations.NullMarked;
