package org.gritwright.core.planning;

/** What keeps a catch from being as certain as wanted, in a technician's words. */
public enum Cause {
    /** The catches' own scatter. */
    SCATTER(
            "the scatter of the catches themselves",
            "Allow more repeats, or find out why catches differ: oil not warm, hopper nearly empty, gate not set the"
                    + " same, start and stop not the same."),
    /** The rounding of the scale. */
    ROUNDING("the scale's division", "Take a scale with a finer division, or catch more: more or larger containers."),
    /** The count of revolutions. */
    COUNT(
            "the count of revolutions",
            "Catch more revolutions, in more or larger containers, or have a sensor with more pulses per"
                    + " revolution."),
    /** The span of the scale. */
    SPAN(
            "the accuracy of the scale",
            "Check the scale that day with a test weight near the load, or take a more accurate scale."),
    /** Material that misses the containers. */
    SPILLAGE("material that may miss the containers", "Catch all that falls: a larger tarp, a chute, no wind."),
    /** The start-up that is left in a catch. */
    TRANSIENT(
            "what start and stop add to the catch",
            "Prime the conveyor, and let mass and count cover the same window."),
    /** The moisture of the material. */
    MOISTURE("the moisture of the material", "Measure the moisture of what is caught and of what is spread."),
    /** A run that begins at rest. */
    START("the start of the run from rest", "Run longer, in more or larger containers, or at a lower test speed.");

    private final String words;
    private final String help;

    Cause(String words, String help) {
        this.words = words;
        this.help = help;
    }

    /**
     * What it is; also the name of its component in a plan's budget.
     *
     * @return words to follow "main cause:"
     */
    public String words() {
        return words;
    }

    /**
     * What would help.
     *
     * @return one sentence
     */
    public String help() {
        return help;
    }
}
