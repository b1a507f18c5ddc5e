/** Measured values with their uncertainty, and budgets of where it comes from. Knows no spreader. */
@NullMarked
package org.gritwright.core.uncertainty;

import org.jspecify.annotations.NullMarked;
