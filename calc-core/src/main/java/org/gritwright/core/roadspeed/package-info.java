/** Whether the road-speed value is right: pulses over a measured course. */
@NullMarked
package org.gritwright.core.roadspeed;

import org.jspecify.annotations.NullMarked;
