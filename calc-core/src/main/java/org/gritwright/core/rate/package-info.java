/** Conversion between kinds of rate where more than a unit changes. */
package org.gritwright.core.rate;
