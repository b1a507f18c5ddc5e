/** Is the calibration right, is what was asked for delivered, and is the road speed right? */
package org.gritwright.core.verification;
