/** Whether what was caught can be: apparent fill, slips that explain it, the flow of grains through an opening. */
package org.gritwright.core.plausibility;
