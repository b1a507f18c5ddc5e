/** What a person should know about a result, as data. */
@NullMarked
package org.gritwright.core.finding;

import org.jspecify.annotations.NullMarked;
