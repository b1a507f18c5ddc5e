/** The main job: a fleet's calibration day, from JSON to calibration records, a table and a report. */
module org.gritwright.examples.fleetday {
    requires info.picocli;
    requires io.pebbletemplates;
    requires java.desktop;
    requires java.xml;
    // What sets pages as PDF: automatic modules all, named for their files where they name none.
    requires openhtmltopdf.core;
    requires openhtmltopdf.pdfbox;
    requires org.apache.fontbox;
    requires org.apache.commons.csv;
    requires org.apache.pdfbox;
    requires org.apache.pdfbox.io;
    requires org.gritwright.core;
    requires static org.jspecify;
    // The core's record package needs it, and leaves the choice of a version to us.
    requires com.fasterxml.jackson.core;
    // The template engine logs through it, but has no descriptor to say so; nor has what sets PDF files.
    requires org.slf4j;
    requires org.apache.commons.logging;

    // The command line is read into private fields, and the report's records by the template.
    opens org.gritwright.examples.fleetday to
            info.picocli,
            io.pebbletemplates;
}
