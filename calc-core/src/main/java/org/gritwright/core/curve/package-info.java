/** Discharge per revolution as a function of the gate opening, from catches at several. */
@NullMarked
package org.gritwright.core.curve;

import org.jspecify.annotations.NullMarked;
