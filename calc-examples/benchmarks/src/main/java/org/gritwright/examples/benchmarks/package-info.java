/** How fast the library is, measured against a baseline in the same run. */
@NullMarked
package org.gritwright.examples.benchmarks;

import org.jspecify.annotations.NullMarked;
