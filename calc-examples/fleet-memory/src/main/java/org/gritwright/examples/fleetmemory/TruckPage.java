package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.history.Held;
import org.gritwright.core.history.SlotState;

/** A truck: what its displays hold, who changed what, what is due, and its calibration points over the years. */
final class TruckPage {
    private TruckPage() {}

    static String html(TruckOverview truck, Templates templates) throws IOException {
        Overview fleet = truck.fleet();
        List<PointStory> stories = truck.points().stream()
                .map(point -> PointStory.of(fleet.history(), fleet.drifts(), point, fleet.at()))
                .toList();
        Map<String, Object> model = new HashMap<>(FleetPage.about(fleet));
        model.put("id", truck.id());
        model.put("first", Pages.FIRST);
        model.put(
                "dues",
                truck.dues().stream()
                        .map(due -> FleetPage.DueWords.of(due, fleet.on(), List.of()))
                        .toList());
        model.put("isProven", truck.quiet() == TruckOverview.Quiet.PROVEN);
        model.put("belief", truck.belief().stream().map(Words::minus).toList());
        model.put("doubt", FleetPage.doubt(truck));
        model.put("toDo", FleetPage.toDo(truck));
        model.put("holds", holds(truck));
        model.put(
                "changes",
                new TruckText(fleet.history(), truck.id(), fleet.at())
                        .changes().stream().map(Words::minus).toList());
        model.put(
                "contradictions",
                Contradictions.sentences(truck.contradictions().open()));
        model.put("settled", Contradictions.sentences(truck.contradictions().settled()));
        model.put(
                "points",
                stories.stream().map(story -> DriftSheet.of(fleet, story)).toList());
        model.put(
                "curves",
                SeasonCurves.of(fleet, stories).stream().map(CurveSheet::of).toList());
        return templates.filled("truck.peb", model);
    }

    private static PageTable holds(TruckOverview truck) {
        List<PageTable.Row> rows = new ArrayList<>();
        for (SlotState slot : truck.state().slots()) {
            slot.values().forEach(held -> rows.add(row(truck, slot, held)));
            slot.lost()
                    .ifPresent(lost -> rows.add(PageTable.Row.of(
                            "slot " + slot.slot(),
                            "nobody knows",
                            "lost",
                            PageTable.NONE,
                            lost.at().toString(),
                            PageTable.NONE,
                            lost.what().words())));
        }
        return PageTable.of(
                "What the display holds",
                List.of(
                        "slot",
                        "value",
                        "how sure",
                        "error, with 95 %",
                        "held since",
                        "last verified",
                        "changed since it was verified or entered"),
                rows);
    }

    private static PageTable.Row row(TruckOverview truck, SlotState slot, Held held) {
        return PageTable.Row.of(
                "slot " + slot.slot(),
                held.value().point() + ": " + held.value().factor(),
                held.standing().words(),
                held.error().map(Words::error).orElse(PageTable.NONE),
                held.entered().at().toString(),
                truck.verified(held),
                held.changed().isEmpty()
                        ? "nothing"
                        : Words.minus(String.join(
                                "; ",
                                held.changed().stream().map(TruckText::event).toList())));
    }

    /**
     * The curves of a material, or why there are none.
     *
     * @param picture none with one opening
     */
    record CurveSheet(
            String material,
            List<Picture> picture,
            List<CurvesPicture.Key> keys,
            String caption,
            String words,
            List<PageTable> table) {
        static CurveSheet of(SeasonCurves curves) {
            if (!curves.isCurve()) {
                return new CurveSheet(
                        curves.material(),
                        List.of(),
                        List.of(),
                        "",
                        "Caught at one opening only, "
                                + curves.openings().firstEntry().getValue()
                                + ": there is no curve over the opening to draw. Its values stand above.",
                        List.of());
            }
            CurvesPicture picture = new CurvesPicture(curves, Picture.Width.WIDE);
            return new CurveSheet(
                    curves.material(),
                    List.of(Picture.of(width -> new CurvesPicture(curves, width).drawn())),
                    picture.keys(),
                    picture.caption(),
                    "",
                    List.of(table(curves)));
        }

        private static PageTable table(SeasonCurves curves) {
            List<String> columns = new ArrayList<>(List.of("season"));
            curves.openings().values().forEach(opening -> columns.add("at " + opening));
            columns.add("curve");
            List<PageTable.Row> rows = new ArrayList<>();
            for (SeasonCurves.Curve season : curves.seasons()) {
                List<String> cells = new ArrayList<>();
                for (double opening : curves.openings().keySet()) {
                    cells.add(Optional.ofNullable(season.byOpening().get(opening))
                            .map(at -> cell(curves, season, opening, at))
                            .orElse(PageTable.NONE));
                }
                cells.add(season.fit().map(CurveFit::words).orElse("none fitted"));
                rows.add(new PageTable.Row(season.season(), Optional.empty(), cells));
            }
            return PageTable.of(
                    "What left in the last catch of each season, with 95 %, and by how much that differs from "
                            + curves.reference(),
                    columns,
                    rows);
        }

        private static String cell(SeasonCurves curves, SeasonCurves.Curve season, double opening, SeasonCurves.At at) {
            return at.text() + "\n"
                    + Words.signed(curves.changed(season, opening).orElseThrow() / 100) + "\non "
                    + at.caught().by().at().day();
        }
    }
}
