/** What is said about documents that are read: how large they may be, and what is wrong with them. */
@NullMarked
package org.gritwright.core.document;

import org.jspecify.annotations.NullMarked;
