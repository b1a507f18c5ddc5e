/** A fleet's calibration day as it was written down. Knows no file and no JSON. */
@NullMarked
package org.gritwright.core.fleet.day;

import org.jspecify.annotations.NullMarked;
