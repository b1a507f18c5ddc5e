/**
 * A fleet's calibration day: entries as they were written down, and what they show, truck by truck. Knows no file and
 * no JSON.
 */
package org.gritwright.core.fleet;
