/**
 * What an integrator implements to add a type of conveyor, gate, pump or flow meter: small interfaces, typed parameters and a registry.
 */
@NullMarked
package org.gritwright.core.spi;

import org.jspecify.annotations.NullMarked;
