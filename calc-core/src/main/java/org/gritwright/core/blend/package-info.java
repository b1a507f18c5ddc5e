/** Sand–salt mixes: how much dry chemical is in a mix, and on the road. */
@NullMarked
package org.gritwright.core.blend;

import org.jspecify.annotations.NullMarked;
