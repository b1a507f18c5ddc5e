/** What doses the material: a conveyor with its gate and its drive, and the types that come with the library. */
@NullMarked
package org.gritwright.core.metering;

import org.jspecify.annotations.NullMarked;
