/** Quantities, units, symbols and exact conversion for spreader work. Knows no spreader. */
module org.gritwright.units {
    requires transitive java.measure;
    requires tech.units.indriya;

    exports org.gritwright.units;
    exports org.gritwright.units.quantity;

    provides javax.measure.spi.ServiceProvider with
            org.gritwright.units.spi.SpreadingServiceProvider;
}
