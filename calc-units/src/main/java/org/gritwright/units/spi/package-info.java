/** The bridge to JSR 385's service interface; nothing here is called by hand. */
@NullMarked
package org.gritwright.units.spi;

import org.jspecify.annotations.NullMarked;
