/**
 * Units of spreader work: exact factors, one symbol table for reading and printing, and conversions compiled into plain
 * doubles.
 */
package org.gritwright.units;
