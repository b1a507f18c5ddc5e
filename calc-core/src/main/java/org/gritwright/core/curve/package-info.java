/** Discharge per revolution as a function of the gate opening, from catches at several. */
package org.gritwright.core.curve;
