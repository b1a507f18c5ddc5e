package org.gritwright.core.history.drift;
/** stub. */
public record DriftRule(BetweenDays betweenDays, double trendRisk) {}
