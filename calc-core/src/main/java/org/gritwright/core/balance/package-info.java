/**
 * Weighted least squares of quantities that have to add up, on plain numbers: balances, what is measured and what isn't, gross errors one
 * by one, what can't be told apart and what would have been found. Knows no spreader.
 */
@NullMarked
package org.gritwright.core.balance;

import org.jspecify.annotations.NullMarked;
