/** What a fleet's day shows, truck by truck, and what to do next. */
package org.gritwright.core.fleet.assessment;
