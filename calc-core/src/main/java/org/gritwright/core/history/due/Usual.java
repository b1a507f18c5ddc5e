package org.gritwright.core.history.due;

import java.util.List;
import org.gritwright.core.calibration.CalibrationAge;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** The rules that hold if nobody names others. */
final class Usual {
    private static final double DENSITY_PERCENT = 5;

    private Usual() {}

    static List<DueRule> rules() {
        return List.of(
                new DueRule.EachSeason(CalibrationAge.PREPARATION, ClearedBy.CALIBRATION),
                new DueRule.AfterChange(ClearedBy.CALIBRATION),
                new DueRule.WhileNotProven(),
                new DueRule.OtherLot(Amounts.of(DENSITY_PERCENT, SpreadingUnits.PERCENT), ClearedBy.VERIFICATION));
    }
}
