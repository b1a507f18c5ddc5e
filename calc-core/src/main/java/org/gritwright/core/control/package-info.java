/**
 * Control charts on plain numbers, and what they promise: run lengths are computed, not looked up. An observation is
 * standardized: its deviation from the target ÷ its standard deviation. Knows no spreader.
 */
@NullMarked
package org.gritwright.core.control;

import org.jspecify.annotations.NullMarked;
