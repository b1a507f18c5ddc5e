/**
 * What an integrator implements to add a conveyor or gate type: small interfaces, typed parameters and a registry.
 */
@NullMarked
package org.gritwright.core.spi;

import org.jspecify.annotations.NullMarked;
