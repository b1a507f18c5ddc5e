/**
 * The kinds of quantity that spreader work needs beside those of {@code javax.measure.quantity}.
 *
 * <p>Definitions are the trade's; unit factors come from the legal definitions named in {@link
 * org.gritwright.units.SpreadingUnits}.
 */
@NullMarked
package org.gritwright.units.quantity;

import org.jspecify.annotations.NullMarked;
