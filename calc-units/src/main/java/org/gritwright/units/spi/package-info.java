/** The bridge to JSR 385's service interface; nothing here is called by hand. */
package org.gritwright.units.spi;
