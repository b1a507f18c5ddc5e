/** What a fleet's day shows, truck by truck, and what to do next. */
@NullMarked
package org.gritwright.core.fleet.assessment;

import org.jspecify.annotations.NullMarked;
