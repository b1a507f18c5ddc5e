/** Whether what was caught can be: apparent fill, slips that explain it, the flow of grains through an opening. */
@NullMarked
package org.gritwright.core.plausibility;

import org.jspecify.annotations.NullMarked;
