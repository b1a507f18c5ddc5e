/**
 * The laws that conveyor and gate types obey, as a plain function that returns violations. Knows no test framework.
 */
package org.gritwright.core.conformance;
