package org.gritwright.core.fleet.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.Samples;
import org.gritwright.core.observation.Material;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;

class YardTest {
    private static final FleetDay DAY = Trucks.day(Trucks.idle("T-01"));
    private static final Yard YARD = Yard.of(DAY);

    @Test
    void aMisspelledScaleIsAnsweredWithTheOneThatMayHaveBeenMeant() {
        String id = DAY.scales().get(0).id();
        InvalidInputException refused =
                catchThrowableOfType(InvalidInputException.class, () -> YARD.scale(id.replaceFirst("a", "")));

        assertThat(refused).hasMessageEndingWith("; did you mean \"" + id + "\"?");
        assertThat(refused.field()).isEqualTo("scale");
        assertThat(refused.value()).isEqualTo("\"" + id.replaceFirst("a", "") + "\"");
    }

    @Test
    void anythingElseIsAnsweredWithAllThatThereAre() {
        assertThatThrownBy(() -> YARD.material("quite another thing"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("material must be one of [")
                .hasMessageEndingWith("]: \"quite another thing\"");
    }

    @Test
    void aDayHasOneTruckOrMore() {
        assertThatThrownBy(() -> DAY.withTrucks(List.of()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("trucks of a day must be one or more: none");
    }

    @Test
    void aDayHasNoLiquids() {
        List<Material> materials = List.of(Samples.SALT, LiquidSamples.BRINE);

        assertThatThrownBy(() -> FleetDay.of(
                        DAY.day(), DAY.seasonStart(), DAY.tolerance(), DAY.scales(), materials, DAY.trucks()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("material of a day must be granular, as a truck's day has no liquid side: brine, a liquid");
    }
}
