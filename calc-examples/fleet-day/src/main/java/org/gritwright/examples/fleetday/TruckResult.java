package org.gritwright.examples.fleetday;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * One truck's assessment with what the outputs share. Templates find public methods only, so what they read is public.
 *
 * @param assessment the assessment
 * @param display what the display held and holds
 * @param instruction what to do next
 * @param recordFile the file name of its calibration record
 */
record TruckResult(TruckAssessment assessment, DisplayValue display, Instruction instruction, String recordFile) {

    static TruckResult of(TruckAssessment assessment, String recordFile) {
        return new TruckResult(assessment, DisplayValue.of(assessment), Instruction.of(assessment), recordFile);
    }

    public String id() {
        return assessment.truck().id();
    }

    /** Where the record is, seen from the output folder. */
    public String recordPath() {
        return OutputFolder.RECORDS + "/" + recordFile;
    }

    /** The file name of its page. */
    String pageFile() {
        return recordFile.replaceFirst("json$", "html");
    }

    /** The file name of its paper. */
    String paperFile() {
        return recordFile.replaceFirst("json$", "pdf");
    }

    public boolean needsAttention() {
        return assessment.nextStep().needsAttention();
    }

    /** What meters, for example "conveyor". */
    public String machine() {
        return Metered.machine(assessment.truck());
    }

    public Standing metering() {
        return Standing.metering(assessment);
    }

    public Standing roadSpeed() {
        return Standing.roadSpeed(assessment);
    }

    /** The last verification of what the shown calibration is for: an error of another gate opening isn't its own. */
    Optional<Verification> lastVerification() {
        return assessment.verifications().stream()
                .filter(verification ->
                        DisplayValue.isShown(assessment, verification.source().point()))
                .reduce((earlier, later) -> later);
    }

    /** What the verification catches with the shown calibration say together. */
    Optional<VerificationSeries> judged() {
        return assessment.points().stream()
                .filter(point -> DisplayValue.isShown(assessment, point.point()))
                .flatMap(point -> point.judged().stream())
                .reduce((earlier, later) -> later);
    }

    /** The mass per revolution by what was caught last for the shown calibration: to verify it, or else to make it. Of grains. */
    Optional<Measured<DischargePerRevolution>> measured() {
        return isLiquid() ? Optional.empty() : dischargeMeasured();
    }

    boolean isLiquid() {
        return assessment.truck().spreader().isForLiquids();
    }

    /** The same with its uncertainty; of a liquid in the form in which the display keeps it. */
    Optional<String> measuredText() {
        return dischargeMeasured().map(found -> isLiquid() ? inFormOfDisplay(found) : Figures.measured(found));
    }

    private String inFormOfDisplay(Measured<DischargePerRevolution> found) {
        CalibrationPoint point = DisplayValue.shownPoint(assessment)
                .or(() -> assessment.points().stream().findFirst())
                .orElseThrow()
                .point();
        return Figures.text(Metered.found(assessment, point, found.value()), Figures.DIGITS) + " "
                + Figures.within(Metered.within(assessment, point, found));
    }

    private Optional<Measured<DischargePerRevolution>> dischargeMeasured() {
        return judged().flatMap(VerificationSeries::dischargePerRevolution)
                .or(() -> calibrations().stream()
                        .filter(c -> DisplayValue.isShown(assessment, c.point()))
                        .map(Calibration::dischargePerRevolution)
                        .findFirst());
    }

    List<Calibration> calibrations() {
        return assessment.points().stream()
                .flatMap(point -> point.calibration().stream())
                .toList();
    }

    Optional<Quantity<DischargePerRevolution>> massPerRevolution() {
        return display.massPerRevolution();
    }
}
