/** Checks that name the field they refuse. For this library's modules only. */
@NullMarked
package org.gritwright.units.check;

import org.jspecify.annotations.NullMarked;
