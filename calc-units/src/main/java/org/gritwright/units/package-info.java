/**
 * Units of spreader work: exact factors, one symbol table for reading and printing, and conversions compiled into plain
 * doubles.
 *
 * <p>No parameter may be null unless it says so: a null is answered with a {@link java.lang.NullPointerException} that names
 * the parameter. Input that can't be used is answered with an {@link org.gritwright.units.InvalidInputException}.
 */
@NullMarked
package org.gritwright.units;

import org.jspecify.annotations.NullMarked;
