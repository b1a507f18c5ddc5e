/**
 * What a calibrated truck can do on the road: between which speeds a rate holds, which rates hold at a speed, why it ends there,
 * and what is really put down beyond.
 */
@NullMarked
package org.gritwright.core.envelope;

import org.jspecify.annotations.NullMarked;
