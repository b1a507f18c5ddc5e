/** Checks that name the field they refuse. For this library's modules only. */
package org.gritwright.units.check;
