/** A catch as it was made: of what, under which conditions, with which errors, and within which limits. */
package org.gritwright.core.observation;
