package org.gritwright.units.spi;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import javax.measure.spi.ServiceProvider;
import javax.measure.spi.SystemOfUnits;
import javax.measure.spi.SystemOfUnitsService;
import org.gritwright.units.SpreadingSystemOfUnits;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The bridge to JSR 385's service interface is found, and stays in the background. */
class SpreadingServiceProviderTest {

    @Test
    void isFoundByNameAndAmongTheAvailable() {
        ServiceProvider provider = ServiceProvider.of("Spreading");
        assertThat(provider).isInstanceOf(SpreadingServiceProvider.class).hasToString("Spreading");
        assertThat(ServiceProvider.available()).hasAtLeastOneElementOfType(SpreadingServiceProvider.class);
        assertThat(ServiceProvider.available()).last().isInstanceOf(SpreadingServiceProvider.class);
    }

    @Test
    void offersTheSymbolTableAsASystemOfUnits() {
        SystemOfUnitsService service = ServiceProvider.of("Spreading").getSystemOfUnitsService();
        SystemOfUnits system = service.getSystemOfUnits();
        assertThat(system).isInstanceOf(SpreadingSystemOfUnits.class);
        assertThat(system.getUnit("lb/mi")).isSameAs(SpreadingUnits.POUND_PER_MILE);
        assertThat(service.getSystemOfUnits("Spreading")).isInstanceOf(SpreadingSystemOfUnits.class);
        assertThat(service.getSystemOfUnits("spreading")).isNull();
        assertThat(service.getAvailableSystemsOfUnits()).singleElement().isInstanceOf(SpreadingSystemOfUnits.class);
    }

    @Test
    void hasNoFormatService() {
        assertThat(ServiceProvider.of("Spreading").getFormatService()).isNull();
    }

    @Test
    void isNotTheCurrentProviderBesideTheOracles() {
        assertThat(ServiceProvider.current()).isNotInstanceOf(SpreadingServiceProvider.class);
    }

    @Test
    void isNotTheCurrentProviderBesideIndriyaAlone(@TempDir Path folder) throws Exception {
        try (IsolatedProviders application = new IsolatedProviders(folder, true, List.of())) {
            assertThat(application.ask("available").toString()).isEqualTo("[Default, Spreading]");
            assertThat(application.ask("current")).hasToString("Default");
            assertThat(application.ask("of", "Spreading")).hasToString("Spreading");
            assertThat(application.ask("current")).hasToString("Default");
        }
    }

    @Test
    void isNotTheCurrentProviderEvenBesideOneOfVeryLowPriority(@TempDir Path folder) throws Exception {
        List<Class<?>> extra = List.of(ProviderOfNegativePriority.class);
        try (IsolatedProviders application = new IsolatedProviders(folder, false, extra)) {
            assertThat(application.ask("current")).hasToString("negative");
            assertThat(application.ask("available").toString()).isEqualTo("[negative, Spreading]");
        }
    }

    @Test
    void wouldBeTheCurrentProviderIfItWereTheOnlyOne(@TempDir Path folder) throws Exception {
        // Shows that the two tests above could fail: the isolated application does load this provider.
        try (IsolatedProviders application = new IsolatedProviders(folder, false, List.of())) {
            assertThat(application.ask("current")).hasToString("Spreading");
        }
    }
}
