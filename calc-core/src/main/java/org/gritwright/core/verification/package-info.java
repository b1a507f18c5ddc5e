/** Is the calibration right, is what was asked for delivered, and is the road speed right? */
@NullMarked
package org.gritwright.core.verification;

import org.jspecify.annotations.NullMarked;
