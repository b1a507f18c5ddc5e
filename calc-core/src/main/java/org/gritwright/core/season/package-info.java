/**
 * A season's salt that has to add up: piles with their deliveries and surveys, trucks with what they indicate, and which truck, ticket, scale or
 * survey is likely wrong. Knows neither records nor telemetry.
 */
@NullMarked
package org.gritwright.core.season;

import org.jspecify.annotations.NullMarked;
