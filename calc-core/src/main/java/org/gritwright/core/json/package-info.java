/** The generic reader and writer under the documents, hidden; the only package that knows Jackson. */
@NullMarked
package org.gritwright.core.json;

import org.jspecify.annotations.NullMarked;
