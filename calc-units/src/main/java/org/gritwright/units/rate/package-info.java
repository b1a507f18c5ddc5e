/** Conversion between kinds of application rate, granular and liquid, where it takes lanes, a width, a speed or a density. */
package org.gritwright.units.rate;
