/** A plan for a fleet's day: how much to catch, how, and how long it takes. */
@NullMarked
package org.gritwright.core.fleet.plan;

import org.jspecify.annotations.NullMarked;
