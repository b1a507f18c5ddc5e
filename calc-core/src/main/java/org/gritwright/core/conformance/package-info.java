/**
 * The laws that conveyor and gate types obey, as a plain function that returns violations. Knows no test framework.
 */
@NullMarked
package org.gritwright.core.conformance;

import org.jspecify.annotations.NullMarked;
