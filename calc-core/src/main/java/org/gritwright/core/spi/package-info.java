/**
 * What an integrator implements to add a conveyor or gate type: small interfaces, typed parameters and a registry.
 */
package org.gritwright.core.spi;
