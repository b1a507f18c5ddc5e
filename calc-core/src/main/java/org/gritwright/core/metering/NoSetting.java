package org.gritwright.core.metering;

import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;

/** Of what has nothing to set. */
final class NoSetting {
    private NoSetting() {}

    static void require(Setting setting, String of) {
        setting.quantity().ifPresent(given -> {
            throw new InvalidInputException(
                    Setting.FIELD, "left out for " + of + ", which has nothing to set", Amounts.format(given));
        });
    }
}
