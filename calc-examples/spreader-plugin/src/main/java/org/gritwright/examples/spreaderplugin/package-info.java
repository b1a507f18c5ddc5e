/** Types of a conveyor, a gate, a pump and a flow meter that the library doesn't know. */
@NullMarked
package org.gritwright.examples.spreaderplugin;

import org.jspecify.annotations.NullMarked;
