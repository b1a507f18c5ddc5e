/** Measured values with their uncertainty, and where it comes from. Knows no spreader. */
package org.gritwright.core.uncertainty;
