/** A catch as it was made: of what, under which conditions, with which errors, and within which limits. */
@NullMarked
package org.gritwright.core.observation;

import org.jspecify.annotations.NullMarked;
