/** Estimators, fits and tests on plain numbers: ratios, lines, curves, rising tables, outliers, lack of fit. Knows no spreader. */
@NullMarked
package org.gritwright.core.statistics;

import org.jspecify.annotations.NullMarked;
