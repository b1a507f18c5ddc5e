/** Conversion between kinds of application rate, granular and liquid, where it takes lanes, a width, a speed or a density. */
@NullMarked
package org.gritwright.units.rate;

import org.jspecify.annotations.NullMarked;
