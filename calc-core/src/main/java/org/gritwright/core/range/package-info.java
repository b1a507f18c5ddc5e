/**
 * What a truck's drive can do: a conveyor's valve, measured from command to steady shaft speed, and the working range that
 * follows from it.
 */
@NullMarked
package org.gritwright.core.range;

import org.jspecify.annotations.NullMarked;
