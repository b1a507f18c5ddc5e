/** How fast the library is. */
module org.gritwright.examples.benchmarks {
    requires jmh.core;
    requires org.gritwright.core;
    requires static org.jspecify;
}
