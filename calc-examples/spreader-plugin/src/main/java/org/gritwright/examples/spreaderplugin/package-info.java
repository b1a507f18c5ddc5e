/** A conveyor type and a gate type that the library doesn't know. */
package org.gritwright.examples.spreaderplugin;
