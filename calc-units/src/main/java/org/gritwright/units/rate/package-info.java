/** Application rates of granular and liquid materials, turned into one another where lanes, widths, speeds or densities are needed. */
package org.gritwright.units.rate;
