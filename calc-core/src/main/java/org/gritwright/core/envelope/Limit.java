package org.gritwright.core.envelope;

/** Why a spreader can't put down more, or less. */
public enum Limit {
    /** The shaft can't turn any slower and still turn steadily. */
    SLOWEST_STEADY_SHAFT("the shaft can't turn more slowly and stay steady"),
    /** The valve is fully open, or the pump gives no more. */
    FASTEST_SHAFT("the drive turns the shaft no faster"),
    /** At this engine speed the pump gives no more oil. */
    ENGINE_SPEED("the pump turns the shaft no faster at this engine speed"),
    /** Grains fall no faster through this opening. */
    GRAIN_FLOW("the grains run no faster through the gate"),
    /** Below it the nozzles of a boom lose their pattern. */
    LOWEST_NOZZLE_PRESSURE("the nozzles are made for no lower pressure"),
    /** Above it the nozzles of a boom make mist, or aren't made for it. */
    HIGHEST_NOZZLE_PRESSURE("the nozzles are made for no higher pressure"),
    /** The pump for liquid can't run any slower and still run steadily. */
    LEAST_PUMP_FLOW("the pump can't give less and stay steady"),
    /** The pump for liquid gives no more. */
    MOST_PUMP_FLOW("the pump gives no more"),
    /** Below it the flow meter counts nothing, or not rightly. */
    LEAST_METER_FLOW("the flow meter isn't right at a lower flow"),
    /** Above it nobody knows what a pulse of the flow meter means. */
    MOST_METER_FLOW("the flow meter isn't right at a higher flow");

    private final String words;

    Limit(String words) {
        this.words = words;
    }

    /**
     * The limit in English.
     *
     * @return a clause, for example "the drive turns the shaft no faster"
     */
    public String words() {
        return words;
    }
}
