/** Nozzles and booms: which flow and pressure a rate of liquid takes, at which speeds it holds, and which nozzles are worn or blocked. */
@NullMarked
package org.gritwright.core.boom;

import org.jspecify.annotations.NullMarked;
