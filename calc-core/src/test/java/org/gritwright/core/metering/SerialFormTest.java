package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.chainWith;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.Samples.revolutionsByEye;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.PULSE;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.SECOND;
import static org.gritwright.units.SpreadingUnits.SQUARE_CENTIMETER;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a data engine ships to its workers arrives as it was, and prints as people write it. */
@Tag("locale")
class SerialFormTest {
    private static final OpenLoop OPEN_LOOP = new OpenLoop(
            Amounts.of(1, ONE),
            List.of(
                    new OpenLoop.Row(Amounts.of(2, ONE), Amounts.of(10, REVOLUTION_PER_MINUTE)),
                    new OpenLoop.Row(Amounts.of(4, ONE), Amounts.of(30, REVOLUTION_PER_MINUTE))));

    private static final Spreader IN_PERCENT = new Spreader(
            CHAIN.conveyor(),
            Gate.of(
                    TableGate.bySetting(),
                    Map.of(
                            "settings", List.of(Amounts.of(10, PERCENT), Amounts.of(100, PERCENT)),
                            "areas", List.of(Amounts.of(50, SQUARE_CENTIMETER), Amounts.of(500, SQUARE_CENTIMETER)))),
            NoSensor.onDriveShaft());

    private static final Spreader FIXED = new Spreader(
            CHAIN.conveyor(), Gate.of(new FixedGate(), Map.of("width", inches(24), "height", inches(4))), SENSOR);

    private static ShaftCount readings(Optional<Double> modulus) {
        return new ShaftCount.CounterReadings(
                Amounts.of(120, PULSE), Amounts.of(476, PULSE), modulus.map(one -> Amounts.of(one, PULSE)));
    }

    private static ShaftCount timed() {
        return new ShaftCount.SpeedTimesTime(Amounts.of(40, REVOLUTION_PER_MINUTE), Amounts.of(30, SECOND));
    }

    private static ShaftCount atSetting() {
        return new ShaftCount.SettingTimesTime(Amounts.of(3, ONE), Amounts.of(60, SECOND));
    }

    static Stream<Serializable> values() {
        return Stream.of(
                CHAIN,
                AUGER,
                IN_PERCENT,
                FIXED,
                chainWith(OPEN_LOOP),
                CHAIN.conveyor().parameters(),
                IN_PERCENT.gate().parameters(),
                TypeId.of("drag-chain", 1),
                FillLimits.COMMON,
                pulses(356),
                readings(Optional.empty()),
                readings(Optional.of(1000.0)),
                revolutionsByEye(20),
                timed(),
                atSetting());
    }

    @SuppressWarnings("unchecked") // what was written is what is read
    private static <T extends Serializable> T shipped(T value) throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(value);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return (T) in.readObject();
        }
    }

    @ParameterizedTest
    @MethodSource("values")
    void aValueArrivesEqualAndPrintsTheSame(Serializable value) throws Exception {
        Serializable arrived = shipped(value);

        assertThat(arrived)
                .isNotSameAs(value)
                .isEqualTo(value)
                .hasSameHashCodeAs(value)
                .hasToString(value.toString());
    }

    @Test
    void aSpreaderThatArrivedSweepsWhatItSwept() throws Exception {
        assertThat(shipped(CHAIN).sweptCubicMetersPerRevolution(Setting.height(inches(4))))
                .isEqualTo(CHAIN.sweptCubicMetersPerRevolution(Setting.height(inches(4))));
        assertThat(shipped(AUGER).sweptCubicMetersPerRevolution(Setting.none()))
                .isEqualTo(AUGER.sweptCubicMetersPerRevolution(Setting.none()));
        assertThat(shipped(IN_PERCENT).sweptCubicMetersPerRevolution(Setting.percent(40)))
                .isEqualTo(IN_PERCENT.sweptCubicMetersPerRevolution(Setting.percent(40)));
        assertThat(shipped(FIXED).sweptCubicMetersPerRevolution(Setting.none()))
                .isEqualTo(FIXED.sweptCubicMetersPerRevolution(Setting.none()));
        assertThat(shipped(IN_PERCENT.sweptByOpening()).applyAsDouble(0.4))
                .isEqualTo(IN_PERCENT.sweptByOpening().applyAsDouble(0.4));
    }

    @Test
    void aCountThatArrivedIsTheSameCount() throws Exception {
        assertThat(shipped(readings(Optional.of(1000.0))).revolutions(SENSOR)).isEqualTo(3.56);
        assertThat(shipped(atSetting()).revolutions(shipped(OPEN_LOOP)))
                .isEqualTo(atSetting().revolutions(OPEN_LOOP));
    }

    @Test
    void printsAsPeopleWriteIt() {
        assertThat(CHAIN)
                .hasToString("drag-chain, version 1 {barShare=0 %, chainPitch=2.609 in, teeth=6};"
                        + " sliding-gate, version 1 {deadOpening=0 mm, highestOpening=1 m, width=24 in};"
                        + " sensor with 100 pulse/rev, gear ratio 1");
        assertThat(IN_PERCENT.gate())
                .hasToString("setting-table, version 1 {areas=50 cm², 500 cm², settings=10 %, 100 %}");
        assertThat(NoSensor.onDriveShaft()).hasToString("no sensor, gear ratio 1");
        assertThat(OPEN_LOOP).hasToString("open loop with 10 rev/min at 2, 30 rev/min at 4, gear ratio 1");
        assertThat(pulses(356)).hasToString("356 pulse");
        assertThat(readings(Optional.empty())).hasToString("counter from 120 pulse to 476 pulse");
        assertThat(readings(Optional.of(1000.0)))
                .hasToString("counter from 120 pulse to 476 pulse, modulus 1000 pulse");
        assertThat(revolutionsByEye(20)).hasToString("20 rev by eye, standard uncertainty 0.1 rev");
        assertThat(timed()).hasToString("40 rev/min for 30 s");
        assertThat(atSetting()).hasToString("control setting 3 for 60 s");
    }
}
