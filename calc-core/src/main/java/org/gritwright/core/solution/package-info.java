/**
 * Solutions of one salt in water: what their density and freezing point are, how strong one is by a reading, and how one is made.
 * What is known is what was published, and nothing beyond it.
 */
@NullMarked
package org.gritwright.core.solution;

import org.jspecify.annotations.NullMarked;
