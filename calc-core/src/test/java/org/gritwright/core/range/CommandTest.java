package org.gritwright.core.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertRefused;

import org.gritwright.core.Shipped;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("locale")
class CommandTest {
    @Test
    void aCommandIsWrittenAsItWasRead() {
        assertThat(Command.percent(40)).hasToString("40 %");
        assertThat(Command.milliamperes(12.5)).hasToString("12.5 mA");
        assertThat(Command.number(7)).hasToString("7");
        assertThat(Command.percent(-0.0)).isEqualTo(Command.percent(0));
    }

    @Test
    void aCommandIsAQuantityBothWays() {
        for (Command command : new Command[] {Command.percent(40), Command.milliamperes(12.5), Command.number(7)}) {
            assertThat(Command.of(command.quantity())).isEqualTo(command);
        }
        assertThat(Command.milliamperes(12.5).quantity()).isEqualTo(Amounts.of(12.5, SpreadingUnits.MILLIAMPERE));
        assertThat(Command.of(Amounts.parseAny("4 mA"))).isEqualTo(Command.milliamperes(4));
        assertRefused(
                "command must be a percentage or a current in mA or a bare number: 3 in",
                () -> Command.of(Amounts.of(3, SpreadingUnits.INCH)));
        assertRefused("command must be finite: NaN", () -> Command.percent(Double.NaN));
    }

    @Test
    void commandsAreValues() {
        Shipped.assertIsAValue(Command.percent(40), Command.percent(40), Command.number(40));
        Shipped.assertIsAValue(CommandScale.percent(1), CommandScale.percent(1), CommandScale.milliamperes(4, 20, 0.1));
    }

    @Test
    void anIntervalHasItsEnds() {
        CommandInterval interval = Drives.percents(30, 32);

        assertThat(interval.contains(Command.percent(30))).isTrue();
        assertThat(interval.contains(Command.percent(32))).isTrue();
        assertThat(interval.contains(Command.percent(32.1))).isFalse();
        assertThat(interval.contains(Command.percent(29.9))).isFalse();
        assertThat(interval.contains(Command.number(31))).isFalse();
        assertThat(interval.isSingle()).isFalse();
        assertThat(interval).hasToString("30 % to 32 %");
        assertThat(Drives.percents(30, 30).isSingle()).isTrue();
        assertThat(Drives.percents(30, 30)).hasToString("30 %");
        assertRefused("end of the commands must be a percentage, at least 30 %: 29 %", () -> Drives.percents(30, 29));
        assertRefused(
                "end of the commands must be a percentage, at least 30 %: 40",
                () -> new CommandInterval(Command.percent(30), Command.number(40)));
    }

    @Test
    void aScaleHasADirectionAndAStep() {
        assertRefused("highest command must be greater than 20: 20", () -> CommandScale.numbers(20, 20, 1));
        assertRefused("highest command must be greater than 20 mA: 4 mA", () -> CommandScale.milliamperes(20, 4, 1));
        String step = "command step must be from a millionth of the span to all of it: ";
        assertRefused(step + "0 %", () -> CommandScale.percent(0));
        assertRefused(step + "101 %", () -> CommandScale.percent(101));
        assertRefused(step + "0.00009 %", () -> CommandScale.percent(0.00009));
        assertRefused(
                "command step must be from a millionth of the span to all of it: 17 mA",
                () -> CommandScale.milliamperes(4, 20, 17));
        assertThat(CommandScale.percent(100).steps()).isEqualTo(1);
        assertThat(CommandScale.percent(0.0001).steps()).isEqualTo(1_000_000);
        assertRefused(
                "highest command must be a percentage: 20 mA",
                () -> new CommandScale(Command.percent(0), Command.milliamperes(20), Command.percent(1)));
        assertRefused(
                "command step must be a percentage: 1",
                () -> new CommandScale(Command.percent(0), Command.percent(20), Command.number(1)));
    }

    @Test
    void commandsOutsideTheScaleAreRefused() {
        CommandScale scale = CommandScale.milliamperes(4, 20, 0.1);

        assertThat(scale.require(Command.milliamperes(4))).isEqualTo(Command.milliamperes(4));
        assertThat(scale.require(Command.milliamperes(20))).isEqualTo(Command.milliamperes(20));
        assertRefused("command must be within 4 mA to 20 mA: 3.9 mA", () -> scale.require(Command.milliamperes(3.9)));
        assertRefused("command must be within 4 mA to 20 mA: 20.1 mA", () -> scale.require(Command.milliamperes(20.1)));
        assertRefused("command must be a current in mA: 5 %", () -> scale.require(Command.percent(5)));
    }
}
