/**
 * What one slip would explain of a truck's day that doesn't fit together: every slip that people are known to make is tried on
 * all that is written down, and those are named that make it much more likely.
 */
@NullMarked
package org.gritwright.core.fleet.review;

import org.jspecify.annotations.NullMarked;
