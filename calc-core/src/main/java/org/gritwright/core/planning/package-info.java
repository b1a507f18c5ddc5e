/**
 * Planning: how much to catch, how often and for how long, so that a calibration or its check is as certain as wanted, and
 * what is to blame where it can't be.
 */
package org.gritwright.core.planning;
