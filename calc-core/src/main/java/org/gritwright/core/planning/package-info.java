/**
 * Planning: how much to catch, how often and for how long, so that a calibration or its check is as certain as wanted,
 * and the main cause where it can't be; of grains that are weighed, and of liquids that are read or weighed.
 */
@NullMarked
package org.gritwright.core.planning;

import org.jspecify.annotations.NullMarked;
