/** A conveyor type and a gate type that the library doesn't know. */
@NullMarked
package org.gritwright.examples.spreaderplugin;

import org.jspecify.annotations.NullMarked;
