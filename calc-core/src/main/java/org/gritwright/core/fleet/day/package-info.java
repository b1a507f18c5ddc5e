/** A fleet's calibration day as it was written down. Knows no file and no JSON. */
package org.gritwright.core.fleet.day;
