/** A measured error against a tolerance: the caller's rule and the verdict. Statistics only; gives no advice. */
@NullMarked
package org.gritwright.core.judgement;

import org.jspecify.annotations.NullMarked;
