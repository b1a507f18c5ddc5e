/** The components that the budgets of calibration, verification and curves are made of. */
@NullMarked
package org.gritwright.core.budget;

import org.jspecify.annotations.NullMarked;
