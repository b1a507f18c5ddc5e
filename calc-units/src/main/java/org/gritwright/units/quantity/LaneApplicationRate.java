package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Mass of material per lane distance: per distance of one traffic lane.
 *
 * <p>SI unit kg/(lane·m); trade units lb/lane-mi, kg/lane-km. A lane-mile is a length times a count of lanes, not
 * an area; an area needs a {@link LaneWidth}.
 */
public interface LaneApplicationRate extends Quantity<LaneApplicationRate> {}
