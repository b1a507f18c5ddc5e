/** A plan for a fleet's day: how much to catch, how, and how long it takes. */
package org.gritwright.core.fleet.plan;
