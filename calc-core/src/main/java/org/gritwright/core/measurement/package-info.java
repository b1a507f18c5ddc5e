/**
 * Values with uncertainty, estimators, fits and checks of quantities. Knows no spreader.
 */
package org.gritwright.core.measurement;
