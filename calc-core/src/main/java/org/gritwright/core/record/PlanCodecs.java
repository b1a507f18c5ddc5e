package org.gritwright.core.record;

import static org.gritwright.core.json.Codecs.COUNT;
import static org.gritwright.core.json.Codecs.TEXT;
import static org.gritwright.core.json.Codecs.listOf;
import static org.gritwright.core.json.Codecs.quantity;
import static org.gritwright.core.json.Field.inlined;
import static org.gritwright.core.json.Field.list;
import static org.gritwright.core.json.Field.optional;
import static org.gritwright.core.json.Field.required;
import static org.gritwright.core.json.ObjectCodec.object;
import static org.gritwright.core.record.ValueCodecs.MASS;
import static org.gritwright.core.record.ValueCodecs.ROTATION;
import static org.gritwright.core.record.ValueCodecs.TIME;
import static org.gritwright.core.record.ValueCodecs.TOLERANCE;

import javax.measure.quantity.Speed;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.fleet.day.StepTimes;
import org.gritwright.core.fleet.day.WeighingMethodEntry;
import org.gritwright.core.json.ObjectCodec;
import org.gritwright.core.planning.Containers;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.RevolutionCount;

/** The definition of a fleet day's plan. */
final class PlanCodecs {
    private static final ObjectCodec<StepTimes> STEP_TIMES = object(
            "step-times",
            StepTimes.class,
            required("setUp", TIME),
            required("perCatch", TIME),
            required("perContainer", TIME),
            required("perVerification", TIME),
            required("cleanUp", TIME));

    private static final ObjectCodec<Containers> CONTAINERS = object(
            "containers",
            Containers.class,
            required("containers", COUNT).component("howMany"),
            required("holds", MASS),
            required("tare", MASS));

    private static final ObjectCodec<WeighingMethodEntry> WEIGHING_METHOD = object(
            "weighing-method",
            WeighingMethodEntry.class,
            required("name", TEXT),
            required("scale", TEXT),
            inlined("containers", CONTAINERS),
            required("times", STEP_TIMES));

    static final ObjectCodec<PlanEntry> PLAN = object(
            "plan",
            PlanEntry.class,
            required("wantedUncertainty", TOLERANCE),
            optional("wantedVerificationUncertainty", TOLERANCE),
            optional("fewestRepeats", COUNT),
            optional("mostRepeats", COUNT),
            optional("shaftSpeed", ROTATION),
            optional("lowestShaftSpeed", ROTATION),
            optional("highestShaftSpeed", ROTATION),
            optional("startTimeConstant", TIME),
            optional("greatestStartLoss", TOLERANCE),
            optional("countUncertainty", quantity(RevolutionCount.class)),
            list("targetRates", quantity(ApplicationRate.class)),
            list("testSpeeds", quantity(Speed.class)),
            required("weighingMethods", listOf(WEIGHING_METHOD)));

    private PlanCodecs() {}
}
