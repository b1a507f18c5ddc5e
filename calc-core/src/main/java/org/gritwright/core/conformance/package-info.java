/**
 * The laws that types of conveyors, gates, pumps and flow meters obey, as a plain function that returns violations. Knows no test framework.
 */
@NullMarked
package org.gritwright.core.conformance;

import org.jspecify.annotations.NullMarked;
