package org.gritwright.core.simulation;

import java.util.List;
import java.util.Objects;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.regex.Pattern;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.VerificationCatchEntry;

/**
 * Something that is wrong: with the truck, or with what is written down of it. What a fault doesn't touch stays as it is.
 *
 * <p>A fault also knows its own repairs: every document that would be right if this fault had been made somewhere in the
 * recorded one. The simulator's {@link Ideal} compares how likely they are; the assessment is never asked.
 */
final class Fault {
    /** Nothing is wrong. */
    static final Fault NONE = new Fault("none", "nothing");

    private final String id;
    private final String words;
    private String kind;
    private Predicate<TrueTruck> fits = truck -> true;
    private BiFunction<TrueTruck, Draw, TrueTruck> truth = (truck, draw) -> truck;
    private BiFunction<SpreaderEntry, Situation, SpreaderEntry> spreader = (entry, situation) -> entry;
    private BiFunction<List<CalibrationCatchEntry>, Situation, List<CalibrationCatchEntry>> calibrations =
            (catches, situation) -> catches;
    private BiFunction<List<VerificationCatchEntry>, Situation, List<VerificationCatchEntry>> verifications =
            (catches, situation) -> catches;
    private BiFunction<FleetDay, Situation, FleetDay> day = (whole, situation) -> whole;
    private BiFunction<String, Situation, String> text = (json, situation) -> json;
    private ToDoubleFunction<Situation> controllerFactor = situation -> 1;
    private ToDoubleFunction<Situation> verifiedFactor = situation -> 1;
    private Function<FleetDay, List<FleetDay>> repairs = recorded -> List.of();
    private Pattern cause = Pattern.compile("(?!)");
    private List<NextStep> right = List.of(NextStep.FIND_FAULT);

    private Fault(String id, String words) {
        this.id = id;
        this.words = words;
        this.kind = id;
    }

    /** A fault that does nothing yet. The methods named "with" complete it while it is made. */
    static Fault of(String id, String words) {
        return new Fault(id, words);
    }

    private Fault copy() {
        Fault copy = new Fault(id, words);
        copy.kind = kind;
        copy.fits = fits;
        copy.truth = truth;
        copy.spreader = spreader;
        copy.calibrations = calibrations;
        copy.verifications = verifications;
        copy.day = day;
        copy.text = text;
        copy.controllerFactor = controllerFactor;
        copy.verifiedFactor = verifiedFactor;
        copy.repairs = repairs;
        copy.cause = cause;
        copy.right = right;
        return copy;
    }

    /** On which trucks it can be made. */
    Fault where(Predicate<TrueTruck> possible) {
        Fault copy = copy();
        copy.fits = fits.and(possible);
        return copy;
    }

    /** Changes the truck itself. */
    Fault withTruth(BiFunction<TrueTruck, Draw, TrueTruck> change) {
        Fault copy = copy();
        copy.truth = change;
        return copy;
    }

    Fault withSpreader(BiFunction<SpreaderEntry, Situation, SpreaderEntry> edit) {
        Fault copy = copy();
        copy.spreader = edit;
        return copy;
    }

    Fault withCalibrations(BiFunction<List<CalibrationCatchEntry>, Situation, List<CalibrationCatchEntry>> edit) {
        Fault copy = copy();
        copy.calibrations = edit;
        return copy;
    }

    Fault withVerifications(BiFunction<List<VerificationCatchEntry>, Situation, List<VerificationCatchEntry>> edit) {
        Fault copy = copy();
        copy.verifications = edit;
        return copy;
    }

    Fault withDay(BiFunction<FleetDay, Situation, FleetDay> edit) {
        Fault copy = copy();
        copy.day = edit;
        return copy;
    }

    /** Edits the document's text, as a hand at the keyboard does. */
    Fault withText(BiFunction<String, Situation, String> edit) {
        Fault copy = copy();
        copy.text = edit;
        return copy;
    }

    /** By what the controller takes the value in force for more than it says. */
    Fault withController(ToDoubleFunction<Situation> factor) {
        Fault copy = copy();
        copy.controllerFactor = factor;
        return copy;
    }

    /** By what more is discharged in verification catches than where they are said to be made. */
    Fault withVerified(ToDoubleFunction<Situation> factor) {
        Fault copy = copy();
        copy.verifiedFactor = factor;
        return copy;
    }

    Fault withRepairs(Function<FleetDay, List<FleetDay>> all) {
        Fault copy = copy();
        copy.repairs = Objects.requireNonNull(all, "all");
        return copy;
    }

    /** What a technician has to read so that the cause is named. */
    Fault named(String pattern) {
        Fault copy = copy();
        copy.cause = Pattern.compile(pattern);
        return copy;
    }

    /** What a technician should be told; to find the fault, unless said otherwise. */
    Fault told(NextStep... steps) {
        Fault copy = copy();
        copy.right = List.of(steps);
        return copy;
    }

    String id() {
        return id;
    }

    String words() {
        return words;
    }

    boolean fits(TrueTruck truck) {
        return fits.test(truck);
    }

    TrueTruck truth(TrueTruck truck, Draw draw) {
        return truth.apply(truck, draw);
    }

    SpreaderEntry spreader(SpreaderEntry entry, Situation situation) {
        return spreader.apply(entry, situation);
    }

    List<CalibrationCatchEntry> calibrations(List<CalibrationCatchEntry> catches, Situation situation) {
        return List.copyOf(calibrations.apply(catches, situation));
    }

    List<VerificationCatchEntry> verifications(List<VerificationCatchEntry> catches, Situation situation) {
        return List.copyOf(verifications.apply(catches, situation));
    }

    FleetDay day(FleetDay whole, Situation situation) {
        return day.apply(whole, situation);
    }

    String text(String json, Situation situation) {
        return text.apply(json, situation);
    }

    double heldByController(double kilogramsPerRevolution, Situation situation) {
        return kilogramsPerRevolution * controllerFactor.applyAsDouble(situation);
    }

    double verified(double kilogramsPerRevolution, Situation situation) {
        return kilogramsPerRevolution * verifiedFactor.applyAsDouble(situation);
    }

    /** Whether a sentence names the cause. */
    boolean isNamedIn(String sentence) {
        return cause.matcher(sentence).find();
    }

    /** Faults that are repaired alike have one cause, whatever comes of it: no document can tell them apart. */
    boolean hasSameCauseAs(Fault other) {
        return kind.equals(other.kind);
    }

    /** One cause with another fault, which is made elsewhere or in fewer places. */
    Fault alike(String family) {
        Fault copy = copy();
        copy.kind = family;
        return copy;
    }

    List<NextStep> right() {
        return right;
    }

    List<FleetDay> repairs(FleetDay recorded) {
        return repairs.apply(recorded);
    }

    @Override
    public String toString() {
        return id;
    }
}
