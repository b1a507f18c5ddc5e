package org.gritwright.examples.telemetry;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.SortedMap;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.gritwright.core.telemetry.PieceSums;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.jspecify.annotations.Nullable;

/** The tables that have many rows: what of each truck's season goes into them. Times are UTC. */
final class Tables {
    static final StructType HOURS = new StructType()
            .add("truck", DataTypes.StringType, false)
            .add("hour_start", DataTypes.TimestampType, false)
            .add("laid_mg", DataTypes.LongType, false)
            .add("laid_lb", DataTypes.DoubleType, false)
            .add("counted_s", DataTypes.DoubleType, false)
            .add("distance_mi", DataTypes.DoubleType, false)
            .add("distance_unknown_mi", DataTypes.DoubleType, false);

    static final StructType PIECES = new StructType()
            .add("truck", DataTypes.StringType, false)
            .add("trip", DataTypes.IntegerType, false)
            .add("trip_start", DataTypes.TimestampType, false)
            .add("from_mi", DataTypes.DoubleType, false)
            .add("to_mi", DataTypes.DoubleType, false)
            .add("laid_mg", DataTypes.LongType, false)
            .add("counted_s", DataTypes.DoubleType, false)
            .add("distance_spreading_mi", DataTypes.DoubleType, false)
            .add("distance_off_mi", DataTypes.DoubleType, false)
            .add("distance_unknown_mi", DataTypes.DoubleType, false)
            .add("lanes_treated_lane", DataTypes.DoubleType, false)
            .add("rate_lb_per_lane_mi", DataTypes.DoubleType, true)
            .add("target_lb_per_lane_mi", DataTypes.DoubleType, true)
            .add("verdict", DataTypes.StringType, false);

    static final StructType BAD_ROWS = new StructType()
            .add("truck", DataTypes.StringType, false)
            .add("time", DataTypes.TimestampType, true)
            .add("about", DataTypes.StringType, false)
            .add("reading_pulse", DataTypes.LongType, true)
            .add("reason", DataTypes.StringType, false);

    static final StructType ROADS = new StructType()
            .add("road_id", DataTypes.StringType, true)
            .add("laid_mg", DataTypes.LongType, false)
            .add("laid_lb", DataTypes.DoubleType, false)
            .add("laid_uncertainty_95_lb", DataTypes.DoubleType, false)
            .add("liquid_ul", DataTypes.LongType, false)
            .add("liquid_gal", DataTypes.DoubleType, false)
            .add("liquid_uncertainty_95_gal", DataTypes.DoubleType, false)
            .add("prewet_gal_per_ton", DataTypes.DoubleType, true)
            .add("distance_spreading_mi", DataTypes.DoubleType, false)
            .add("distance_off_mi", DataTypes.DoubleType, false)
            .add("distance_unknown_mi", DataTypes.DoubleType, false)
            .add("treated_lane_mi", DataTypes.DoubleType, false)
            .add("rate_lb_per_lane_mi", DataTypes.DoubleType, true)
            .add("target_lb_per_lane_mi", DataTypes.DoubleType, true)
            .add("within_band_percent", DataTypes.DoubleType, true)
            .add("below_band_percent", DataTypes.DoubleType, true)
            .add("above_band_percent", DataTypes.DoubleType, true);

    private static final long MILLIS_PER_HOUR = 3_600_000;

    private Tables() {}

    static Iterator<Row> hours(TruckSeason season) {
        PieceSums hours = season.hours();
        return hours.pieces().stream()
                .map(hour -> RowFactory.create(
                        season.truck(),
                        Instant.ofEpochMilli(hour * MILLIS_PER_HOUR),
                        hours.amount(hour),
                        UsUnits.pounds(hours.amount(hour)),
                        UsUnits.seconds(hours.millis(hour)),
                        UsUnits.miles(hours.covered(hour)),
                        UsUnits.miles(hours.unknown(hour))))
                .iterator();
    }

    static Iterator<Row> pieces(TruckSeason season, Quantity<Length> length) {
        double miles = Amounts.in(length, SpreadingUnits.MILE);
        List<Row> rows = new ArrayList<>();
        for (int trip = 0; trip < season.trips().size(); trip++) {
            Instant start = Instant.ofEpochMilli(season.trips().get(trip).startMillis());
            for (Trip.Piece piece : season.trips().get(trip).pieces(season.target())) {
                rows.add(RowFactory.create(
                        season.truck(),
                        trip + 1,
                        start,
                        piece.number() * miles,
                        (piece.number() + 1) * miles,
                        piece.milligrams(),
                        UsUnits.seconds(piece.millis()),
                        UsUnits.miles(piece.spreadingMillimeters()),
                        UsUnits.miles(piece.offMillimeters()),
                        UsUnits.miles(piece.unknownMillimeters()),
                        season.target().lanes(),
                        orNull(piece.poundsPerMile() / season.target().lanes()),
                        orNull(season.target().poundsPerLaneMile()),
                        piece.verdict().words()));
            }
        }
        return rows.iterator();
    }

    private static @Nullable Double orNull(double number) {
        return Double.isNaN(number) ? null : number;
    }

    /** The line without a name, the first, is what was laid where no road is named. */
    static List<Row> roads(SortedMap<String, RoadTotals> roads) {
        List<Row> rows = new ArrayList<>();
        roads.forEach((name, road) -> {
            double laneMiles = UsUnits.miles(road.laneMillimeters());
            boolean hasTarget = road.withoutTarget() == 0;
            Row row = RowFactory.create(
                    name.isEmpty() ? null : name,
                    road.laid().amount(),
                    UsUnits.pounds(road.laid().amount()),
                    UsUnits.expandedPounds(road.laid()),
                    road.liquid().amount(),
                    UsUnits.gallons(road.liquid().amount()),
                    UsUnits.expandedGallons(road.liquid()),
                    UsUnits.gallonsPerTon(road.wetted()).orElse(null),
                    UsUnits.miles(road.way().spreading()),
                    UsUnits.miles(road.way().off()),
                    UsUnits.miles(road.way().unknown()),
                    laneMiles,
                    laneMiles > 0 ? UsUnits.pounds(road.placed()) / laneMiles : null,
                    laneMiles > 0 && hasTarget ? UsUnits.pounds(road.wantedMilligrams()) / laneMiles : null,
                    UsUnits.percent(road.shares(), road.shares().within()).orElse(null),
                    UsUnits.percent(road.shares(), road.shares().below()).orElse(null),
                    UsUnits.percent(road.shares(), road.shares().above()).orElse(null));
            rows.add(row);
        });
        return rows;
    }

    static Iterator<Row> badRows(TruckSeason season) {
        return season.badRows().stream()
                .map(row -> RowFactory.create(
                        season.truck(),
                        // A row that has no time.
                        row.millis() == Long.MIN_VALUE ? null : Instant.ofEpochMilli(row.millis()),
                        row.about().words(),
                        row.reading() == BadRow.NO_READING ? null : row.reading(),
                        row.why()))
                .iterator();
    }
}
