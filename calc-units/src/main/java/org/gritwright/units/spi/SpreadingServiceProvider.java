package org.gritwright.units.spi;

import java.util.Collection;
import java.util.List;
import javax.measure.spi.FormatService;
import javax.measure.spi.SystemOfUnits;
import javax.measure.spi.SystemOfUnitsService;
import org.gritwright.units.SpreadingSystemOfUnits;
import org.jspecify.annotations.Nullable;
import tech.units.indriya.spi.AbstractServiceProvider;

/**
 * Offers {@link SpreadingSystemOfUnits} through JSR 385's service interface.
 *
 * <p>Its priority is the lowest there is, so that it never takes the place of the embedder's current provider; ask for
 * it with {@code ServiceProvider.of("Spreading")}. It has no format service: text is read and written by {@link
 * org.gritwright.units.Amounts}, which knows the kinds.
 */
public final class SpreadingServiceProvider extends AbstractServiceProvider {
    private static final String NAME = "Spreading";

    /** Made by the service loader. */
    public SpreadingServiceProvider() {}

    @Override
    public int getPriority() {
        return Integer.MIN_VALUE;
    }

    @Override
    public SystemOfUnitsService getSystemOfUnitsService() {
        return new Service();
    }

    /**
     * There is none.
     *
     * @return {@code null}, as JSR 385 provides for
     */
    @Override
    public @Nullable FormatService getFormatService() {
        return null;
    }

    /**
     * The provider's name.
     *
     * @return "Spreading"
     */
    @Override
    public String toString() {
        return NAME;
    }

    private static final class Service implements SystemOfUnitsService {
        @Override
        public SystemOfUnits getSystemOfUnits() {
            return new SpreadingSystemOfUnits();
        }

        @Override
        public @Nullable SystemOfUnits getSystemOfUnits(String name) {
            return NAME.equals(name) ? getSystemOfUnits() : null;
        }

        @Override
        public Collection<SystemOfUnits> getAvailableSystemsOfUnits() {
            return List.of(getSystemOfUnits());
        }
    }
}
