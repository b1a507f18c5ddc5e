/**
 * What is due, why, by when, in the order of what matters on the road, and the least work that clears it, by rules that the caller names.
 */
@NullMarked
package org.gritwright.core.history.due;

import org.jspecify.annotations.NullMarked;
