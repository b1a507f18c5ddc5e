/** Whether the road-speed value is right: pulses over a measured course. */
package org.gritwright.core.roadspeed;
