/** The main job: a fleet's calibration day, from JSON to calibration records, a table and a report. */
module org.gritwright.examples.fleetday {
    requires info.picocli;
    requires io.pebbletemplates;
    requires org.apache.commons.csv;
    requires org.gritwright.core;
    requires static org.jspecify;
    // The core's record package needs it, and leaves the choice of a version to us.
    requires com.fasterxml.jackson.core;
    // The template engine logs through it, but has no descriptor to say so.
    requires org.slf4j;

    // The command line is read into private fields, and the report's records by the template.
    opens org.gritwright.examples.fleetday to
            info.picocli,
            io.pebbletemplates;
}
