/** The smallest embedding: {@link org.gritwright.examples.embedding.TruckDayCsv}. */
@NullMarked
package org.gritwright.examples.embedding;

import org.jspecify.annotations.NullMarked;
