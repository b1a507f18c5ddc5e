/** What stands on the truck: conveyor, gate and drive feedback, with the built-in types. */
package org.gritwright.core.spreader;
