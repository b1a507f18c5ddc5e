package org.gritwright.core.fleet.assessment;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.fleet.day.RouteEntry;
import org.gritwright.units.check.Require;

/**
 * Whether a truck can do a route. Immutable, thread-safe, a value.
 *
 * @param route the route as it was written down
 * @param status whether it can
 * @param fits what it comes to at each setting that is calibrated for the route's material, the one that serves it best, or comes
 *     closest, first; empty where nothing is calibrated, or nobody knows the drive's range
 */
public record RouteAssessment(RouteEntry route, Status status, List<RouteFit> fits) {
    /** Whether a truck can do a route. */
    public enum Status {
        /** One setting or more holds the rate within the day's tolerance at all speeds of the route. */
        HELD("can do it"),
        /** No setting does. */
        NOT_HELD("can't hold rate and speeds"),
        /** Nothing is calibrated for the material. */
        NOT_CALIBRATED("not calibrated for the material"),
        /** It is not known which shaft speeds the drive holds. */
        RANGE_NOT_KNOWN("not known: nobody says what the drive holds");

        private final String words;

        Status(String words) {
            this.words = words;
        }

        /**
         * In words.
         *
         * @return for example "can do it"
         */
        public String words() {
            return words;
        }
    }

    /** Copies the list. */
    public RouteAssessment {
        Require.given(RouteAssessment.class, route, status, fits);
        fits = List.copyOf(fits);
    }

    /**
     * The setting that serves the route, or comes closest.
     *
     * @return the first of the settings
     */
    public Optional<RouteFit> best() {
        return fits.stream().findFirst();
    }
}
