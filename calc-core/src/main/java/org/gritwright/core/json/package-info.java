/** The generic reader and writer under the documents, hidden; the only package that knows Jackson. */
package org.gritwright.core.json;
