/** Documents: strict JSON in, canonical JSON out, with schemas. Needs Jackson. */
package org.gritwright.core.record;
