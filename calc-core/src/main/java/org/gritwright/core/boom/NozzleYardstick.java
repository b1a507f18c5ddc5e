package org.gritwright.core.boom;

/** With what the flows of nozzles are compared. */
public enum NozzleYardstick {
    /** The average of all nozzles, the one that is judged among them: by it a nozzle is off if the boom is uneven, not if all are worn. */
    AVERAGE_OF_ALL("average of all nozzles"),
    /** The average of the nozzles that agree, where one that is far off would pull that of all. */
    AVERAGE_OF_THOSE_THAT_AGREE("average of the nozzles that agree"),
    /** What a new nozzle gives at the pressure: by it all may be worn alike. */
    NEW_NOZZLE("flow of a new nozzle");

    private final String words;

    NozzleYardstick(String words) {
        this.words = words;
    }

    /**
     * In words.
     *
     * @return for example "average of all nozzles"
     */
    public String words() {
        return words;
    }
}
