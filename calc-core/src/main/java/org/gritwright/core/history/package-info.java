/**
 * A fleet's memory: what happened to its trucks as immutable events, and what follows from them: what each slot held at an instant and
 * how sure it was, who changed it when and from what, and the timeline that telemetry is evaluated with.
 *
 * <p>Nothing is ever taken out: a mistaken {@link org.gritwright.core.history.Event} is superseded by another that says why. A
 * {@link org.gritwright.core.history.History} is what the events say together, whatever the order in which they came.
 */
@NullMarked
package org.gritwright.core.history;

import org.jspecify.annotations.NullMarked;
