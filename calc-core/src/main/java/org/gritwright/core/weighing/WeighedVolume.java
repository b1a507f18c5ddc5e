package org.gritwright.core.weighing;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * A caught volume that was weighed: mass ÷ density. Immutable, thread-safe, a value.
 *
 * @param mass what was weighed
 * @param density of the liquid at the temperature at which it was pumped, with its standard uncertainty; greater than zero
 */
public record WeighedVolume(CaughtMass mass, Measured<BulkDensity> density) implements CaughtVolume {
    /**
     * Checks the density.
     *
     * @throws org.gritwright.units.InvalidInputException if it isn't greater than zero or nobody says how uncertain it is
     */
    public WeighedVolume {
        Require.given(WeighedVolume.class, mass, density);
        Require.positive("density of the liquid", BulkDensity.class, density.value());
        Require.that(
                density.standardUncertainty().isPresent(),
                "uncertainty of the density of the liquid",
                "given",
                "nothing");
    }

    private double kilogramsPerCubicMeter() {
        return Amounts.si(BulkDensity.class, density.value());
    }

    /**
     * The caught volume.
     *
     * @return mass ÷ density, in gallons or liters as the mass was weighed in pounds or kilograms
     */
    @Override
    public Quantity<Volume> total() {
        return Amounts.ofSi(si(), UnitSymbol.tradeUnit(Volume.class, mass.total()));
    }

    @Override
    public double si() {
        return mass.kilograms() / kilogramsPerCubicMeter();
    }

    @Override
    public double roundingSi() {
        return mass.roundingKilograms() / kilogramsPerCubicMeter();
    }

    @Override
    public List<Weighing> weighings() {
        return mass.weighings();
    }

    @Override
    public List<Double> readingsSi() {
        return mass.readingsSi();
    }

    @Override
    public int readings() {
        return mass.readings();
    }

    @Override
    public Quantity<?> readingUncertainty() {
        return mass.readingUncertainty();
    }

    @Override
    public Quantity<Mass> division() {
        return mass.division();
    }

    @Override
    public double divisions() {
        return mass.divisions();
    }

    @Override
    public LocalDate measuredOn() {
        return mass.measuredOn();
    }

    @Override
    public String instrument() {
        return mass.instrument();
    }

    @Override
    public boolean isWeighed() {
        return true;
    }

    @Override
    public OptionalDouble relativeSpanLimit() {
        return mass.relativeSpanLimit();
    }

    @Override
    public double assumedSpanLimit() {
        return mass.assumedSpanLimit();
    }

    @Override
    public boolean isSpanTested() {
        return mass.isSpanTested();
    }

    @Override
    public double relativeDensityUncertainty() {
        return density.standardUncertainty()
                .map(u -> Amounts.si(BulkDensity.class, u) / kilogramsPerCubicMeter())
                .orElse(0.0);
    }

    @Override
    public List<Finding> findings() {
        return mass.findings();
    }

    /**
     * Mass and density.
     *
     * @return for example "48.6 lb on scale S-1, 2026-10-19, at 9.83 lb/gal"
     */
    @Override
    public String toString() {
        return mass + ", at " + Amounts.format(density.value());
    }
}
