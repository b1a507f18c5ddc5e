/** What doses the material: a conveyor with its gate and its drive, and the types that come with the library. */
package org.gritwright.core.metering;
