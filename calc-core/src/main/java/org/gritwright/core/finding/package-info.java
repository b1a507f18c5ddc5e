/** What a person should know about a result, as data. */
package org.gritwright.core.finding;
