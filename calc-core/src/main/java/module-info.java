/** The mathematics of spreader calibration and the interfaces for spreader types. */
module org.gritwright.core {
    requires static org.jspecify;
    requires transitive org.gritwright.units;
    requires static com.fasterxml.jackson.core;
    requires org.apache.commons.statistics.distribution;

    exports org.gritwright.core.balance;
    exports org.gritwright.core.blend;
    exports org.gritwright.core.boom;
    exports org.gritwright.core.calibration;
    exports org.gritwright.core.chart;
    exports org.gritwright.core.conformance;
    exports org.gritwright.core.control;
    exports org.gritwright.core.curve;
    exports org.gritwright.core.document;
    exports org.gritwright.core.envelope;
    exports org.gritwright.core.finding;
    exports org.gritwright.core.fleet.assessment;
    exports org.gritwright.core.fleet.day;
    exports org.gritwright.core.fleet.plan;
    exports org.gritwright.core.history;
    exports org.gritwright.core.history.drift;
    exports org.gritwright.core.history.due;
    exports org.gritwright.core.history.fleet;
    exports org.gritwright.core.judgement;
    exports org.gritwright.core.lateral;
    exports org.gritwright.core.metering;
    exports org.gritwright.core.observation;
    exports org.gritwright.core.planning;
    exports org.gritwright.core.plausibility;
    exports org.gritwright.core.range;
    exports org.gritwright.core.record;
    exports org.gritwright.core.roadspeed;
    exports org.gritwright.core.season;
    exports org.gritwright.core.solution;
    exports org.gritwright.core.spi;
    exports org.gritwright.core.statistics;
    exports org.gritwright.core.telemetry;
    exports org.gritwright.core.uncertainty;
    exports org.gritwright.core.verification;
    exports org.gritwright.core.weighing;

    uses org.gritwright.core.spi.ConveyorType;
    uses org.gritwright.core.spi.FlowMeterType;
    uses org.gritwright.core.spi.GateType;
    uses org.gritwright.core.spi.PumpType;
}
