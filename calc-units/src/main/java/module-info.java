/** Quantities, units, symbols and exact conversion for spreader work. Knows no spreader. */
@SuppressWarnings("module") // core is not there yet when this module is compiled
module org.gritwright.units {
    // Not transitive: whoever compiles against this module would then need it.
    requires static org.jspecify;
    requires transitive java.measure;
    requires tech.units.indriya;

    exports org.gritwright.units;
    exports org.gritwright.units.quantity;
    exports org.gritwright.units.rate;
    exports org.gritwright.units.check to
            org.gritwright.core;

    provides javax.measure.spi.ServiceProvider with
            org.gritwright.units.spi.SpreadingServiceProvider;
}
