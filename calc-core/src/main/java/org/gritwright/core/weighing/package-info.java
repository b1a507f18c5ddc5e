/** Scales, containers and the mass that a catch caught. */
@NullMarked
package org.gritwright.core.weighing;

import org.jspecify.annotations.NullMarked;
