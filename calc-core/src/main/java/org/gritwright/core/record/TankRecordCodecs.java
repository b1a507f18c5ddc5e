package org.gritwright.core.record;

import static org.gritwright.core.json.Codecs.NAME;
import static org.gritwright.core.json.Field.optional;
import static org.gritwright.core.json.Field.withDefault;

import org.gritwright.core.json.ObjectCodec;
import org.gritwright.core.judgement.DecisionRule;

/** The definition of format "gritwright/tank-record". */
final class TankRecordCodecs {
    static final ObjectCodec<TankRecord> TANK_RECORD = CalibrationRecordCodecs.OF_RESULTS
            .with(FleetDayCodecs.MATERIAL)
            .with("tank-correction", TankOutcome.Correction.class)
            .with("tank-outcome", TankOutcome.class)
            .object(
                    "tank-record",
                    TankRecord.class,
                    optional("site", NAME),
                    optional("technician", NAME),
                    withDefault("decisionRule", FleetDayCodecs.DECISION_RULE, DecisionRule.SIMPLE));

    private TankRecordCodecs() {}
}
