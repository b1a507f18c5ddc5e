/** Trucks of one kind compared: how their catches scatter together, and how full their conveyors run. */
@NullMarked
package org.gritwright.core.history.fleet;

import org.jspecify.annotations.NullMarked;
