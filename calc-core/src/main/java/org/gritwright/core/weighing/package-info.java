/** Scales, containers and the mass that a catch caught. */
package org.gritwright.core.weighing;
