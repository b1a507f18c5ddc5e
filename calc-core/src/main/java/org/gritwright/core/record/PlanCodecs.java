package org.gritwright.core.record;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.fleet.day.StepTimes;
import org.gritwright.core.fleet.day.WayEntry;
import org.gritwright.core.planning.Containers;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.RevolutionCount;
import org.gritwright.units.quantity.RotationalSpeed;

/** The definition of a fleet day's plan. */
final class PlanCodecs {
    private static final Codec<Quantity<Mass>> MASS = Codecs.quantity(Mass.class);
    private static final Codec<Quantity<Time>> TIME = Codecs.quantity(Time.class);
    private static final Codec<Quantity<RotationalSpeed>> ROTATION = Codecs.quantity(RotationalSpeed.class);

    static final ObjectCodec<PlanEntry> PLAN = plan();

    private PlanCodecs() {}

    private static ObjectCodec<StepTimes> times() {
        Field<StepTimes, Quantity<Time>> setUp = Field.required("setUp", TIME, StepTimes::setUp);
        Field<StepTimes, Quantity<Time>> perCatch = Field.required("perCatch", TIME, StepTimes::perCatch);
        Field<StepTimes, Quantity<Time>> perContainer = Field.required("perContainer", TIME, StepTimes::perContainer);
        Field<StepTimes, Quantity<Time>> perVerification =
                Field.required("perVerification", TIME, StepTimes::perVerification);
        Field<StepTimes, Quantity<Time>> cleanUp = Field.required("cleanUp", TIME, StepTimes::cleanUp);
        return new ObjectCodec<>(
                "step-times",
                List.of(setUp, perCatch, perContainer, perVerification, cleanUp),
                v -> new StepTimes(
                        v.get(setUp), v.get(perCatch), v.get(perContainer), v.get(perVerification), v.get(cleanUp)));
    }

    private static ObjectCodec<WayEntry> way() {
        Field<WayEntry, String> name = Field.required("name", Codecs.TEXT, WayEntry::name);
        Field<WayEntry, String> scale = Field.required("scale", Codecs.TEXT, WayEntry::scale);
        Field<WayEntry, Integer> howMany =
                Field.required("containers", Codecs.COUNT, Containers::howMany).within(WayEntry::containers);
        Field<WayEntry, Quantity<Mass>> holds =
                Field.required("holds", MASS, Containers::holds).within(WayEntry::containers);
        Field<WayEntry, Quantity<Mass>> tare =
                Field.required("tare", MASS, Containers::tare).within(WayEntry::containers);
        Field<WayEntry, StepTimes> times = Field.required("times", times(), WayEntry::times);
        return new ObjectCodec<>(
                "way-of-weighing",
                List.of(name, scale, howMany, holds, tare, times),
                v -> new WayEntry(
                        v.get(name),
                        v.get(scale),
                        new Containers(v.get(howMany), v.get(holds), v.get(tare)),
                        v.get(times)));
    }

    private static ObjectCodec<PlanEntry> plan() {
        Field<PlanEntry, Quantity<Dimensionless>> wanted =
                Field.required("wantedUncertainty", Codecs.TOLERANCE, PlanEntry::wantedUncertainty);
        Field<PlanEntry, Optional<Quantity<Dimensionless>>> wantedVerification = Field.optional(
                "wantedVerificationUncertainty", Codecs.TOLERANCE, PlanEntry::wantedVerificationUncertainty);
        Field<PlanEntry, Optional<Integer>> fewest =
                Field.optional("fewestRepeats", Codecs.COUNT, PlanEntry::fewestRepeats);
        Field<PlanEntry, Optional<Integer>> most = Field.optional("mostRepeats", Codecs.COUNT, PlanEntry::mostRepeats);
        Field<PlanEntry, Optional<Quantity<RotationalSpeed>>> speed =
                Field.optional("shaftSpeed", ROTATION, PlanEntry::shaftSpeed);
        Field<PlanEntry, Optional<Quantity<RotationalSpeed>>> lowest =
                Field.optional("lowestShaftSpeed", ROTATION, PlanEntry::lowestShaftSpeed);
        Field<PlanEntry, Optional<Quantity<RotationalSpeed>>> highest =
                Field.optional("highestShaftSpeed", ROTATION, PlanEntry::highestShaftSpeed);
        Field<PlanEntry, Optional<Quantity<Time>>> start =
                Field.optional("startTimeConstant", TIME, PlanEntry::startTimeConstant);
        Field<PlanEntry, Optional<Quantity<Dimensionless>>> loss =
                Field.optional("greatestStartLoss", Codecs.TOLERANCE, PlanEntry::greatestStartLoss);
        Field<PlanEntry, Optional<Quantity<RevolutionCount>>> count =
                Field.optional("countUncertainty", Codecs.quantity(RevolutionCount.class), PlanEntry::countUncertainty);
        Field<PlanEntry, List<Quantity<ApplicationRate>>> rates =
                Field.list("targetRates", Codecs.quantity(ApplicationRate.class), PlanEntry::targetRates);
        Field<PlanEntry, List<Quantity<Speed>>> speeds =
                Field.list("testSpeeds", Codecs.quantity(Speed.class), PlanEntry::testSpeeds);
        Field<PlanEntry, List<WayEntry>> ways =
                Field.required("waysOfWeighing", Codecs.listOf(way()), PlanEntry::waysOfWeighing);
        return new ObjectCodec<>(
                "plan",
                List.of(
                        wanted,
                        wantedVerification,
                        fewest,
                        most,
                        speed,
                        lowest,
                        highest,
                        start,
                        loss,
                        count,
                        rates,
                        speeds,
                        ways),
                v -> new PlanEntry(
                        v.get(wanted),
                        v.get(wantedVerification),
                        v.get(fewest),
                        v.get(most),
                        v.get(speed),
                        v.get(lowest),
                        v.get(highest),
                        v.get(start),
                        v.get(loss),
                        v.get(count),
                        v.get(rates),
                        v.get(speeds),
                        v.get(ways)));
    }
}
