/** Documents: strict JSON in, canonical JSON out, with schemas. The only package that knows Jackson. */
package org.gritwright.core.record;
