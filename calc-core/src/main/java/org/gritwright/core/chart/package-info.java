/**
 * Charts and cards for cab and yard as plain data: which shaft speed, which flow or which rate at which road speed, each cell the
 * answer of the mathematics, rounded once; and what a driver needs of it on a card.
 */
@NullMarked
package org.gritwright.core.chart;

import org.jspecify.annotations.NullMarked;
