/** What lies where across the road: a lateral spread test with weighed pans. */
@NullMarked
package org.gritwright.core.lateral;

import org.jspecify.annotations.NullMarked;
