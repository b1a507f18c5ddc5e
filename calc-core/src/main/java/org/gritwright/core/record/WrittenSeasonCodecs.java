package org.gritwright.core.record;

import static org.gritwright.core.json.Codecs.listOf;
import static org.gritwright.core.json.Codecs.notEmpty;
import static org.gritwright.core.json.Field.inlined;
import static org.gritwright.core.json.Field.optional;
import static org.gritwright.core.json.Field.required;

import java.time.LocalDate;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.json.Codec;
import org.gritwright.core.json.CodecBook;
import org.gritwright.core.json.Codecs;
import org.gritwright.core.json.ObjectCodec;
import org.gritwright.core.season.CommonError;
import org.gritwright.core.season.StatedMass;
import org.jspecify.annotations.Nullable;

/** The definition of format "gritwright/season-account". */
final class WrittenSeasonCodecs {
    /** An account as it is written, before its parts are compared: so that each of what is wrong has its place. */
    private record Entered(
            String season, LocalDate from, LocalDate to, List<WrittenPile> piles, List<WrittenTruckSeason> trucks) {
        static Entered of(WrittenSeason season) {
            return new Entered(season.season(), season.from(), season.to(), season.piles(), season.trucks());
        }

        SeasonFaults faults() {
            return SeasonFaults.of(season, from, to, piles, trucks);
        }

        @Nullable
        WrittenSeason made() {
            return faults().isNone() ? new WrittenSeason(season, from, to, piles, trucks) : null;
        }
    }

    private static final Codec<Quantity<Dimensionless>> UNCERTAINTY =
            Codecs.percentage("relative-uncertainty", "above 0 %", "0.5 %", number -> number > 0);

    private static final Codec<Quantity<Dimensionless>> ERROR =
            Codecs.percentage("relative-error", "above -100 %", "1.5 %", number -> number > -100);

    private static final CodecBook OF_ERRORS =
            CodecBook.of(Codecs.NAME, Codecs.DATE, UNCERTAINTY).with("season-shared-error", CommonError.class);

    private static final CodecBook OF_MASSES = OF_ERRORS.with(
            "season-mass",
            StatedMass.class,
            optional("sharedError", OF_ERRORS.get(CommonError.class)).component("common"));

    private static final CodecBook OF_PARTS = OF_MASSES
            .with("season-survey", WrittenPile.Survey.class, inlined("mass"))
            .with("season-delivery", WrittenPile.Ticket.class, inlined("mass"))
            .with("season-use", WrittenPile.Use.class, inlined("mass"))
            .with("season-calibration-error", WrittenTruckSeason.CalibrationError.class, required("value", ERROR))
            .with("season-draw", WrittenTruckSeason.Drawn.class)
            .with("season-loads", WrittenTruckSeason.Loads.class);

    static final ObjectCodec<WrittenSeason> SEASON_ACCOUNT = OF_PARTS.with(
                    "season-pile",
                    WrittenPile.class,
                    required(
                            "surveys",
                            notEmpty(
                                    listOf(OF_PARTS.get(WrittenPile.Survey.class)),
                                    "one survey or more, of which the last is the closing")))
            .with("season-truck", WrittenTruckSeason.class)
            .object("season-account", Entered.class, required("piles"), required("trucks"))
            .checked((entered, pointer, problems) -> entered.faults().tell(problems))
            .as(WrittenSeason.class, Entered::made, Entered::of);

    private WrittenSeasonCodecs() {}
}
