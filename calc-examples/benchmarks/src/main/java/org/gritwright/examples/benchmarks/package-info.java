/** How fast the library is, measured against a baseline in the same run. */
package org.gritwright.examples.benchmarks;
