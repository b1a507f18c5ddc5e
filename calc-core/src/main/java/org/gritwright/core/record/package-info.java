/** Documents: strict JSON in, canonical JSON out, with schemas. Needs Jackson. */
@NullMarked
package org.gritwright.core.record;

import org.jspecify.annotations.NullMarked;
