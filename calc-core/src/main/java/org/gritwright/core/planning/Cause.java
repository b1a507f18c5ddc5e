package org.gritwright.core.planning;

/** What keeps a catch from being as certain as wanted, in a technician's words. */
public enum Cause {
    /** The catches' own scatter. */
    SCATTER(
            "the scatter of the catches themselves",
            "Allow more repeats, or find out why catches differ: oil not warm, hopper or tank nearly empty, gate not"
                    + " set the same, start and stop not the same."),
    /** The rounding of the scale. */
    ROUNDING("the scale's division", "Take a scale with a finer division, or catch more: more or larger containers."),
    /** The reading of a graduated container. */
    READING(
            "the division of the container",
            "Read a container with a finer division, or catch more: more fills or a larger container."),
    /** The count of revolutions, or of a flow meter's pulses. */
    COUNT(
            "the count of revolutions",
            "Catch more revolutions, in more or larger containers, or have a sensor with more pulses per"
                    + " revolution."),
    /** The span of the scale. */
    SPAN(
            "the accuracy of the scale",
            "Check the scale that day with a test weight near the load, or take a more accurate scale."),
    /** The marks of a graduated container. */
    MARKS(
            "the marks of the container",
            "Take a container of a closer tolerance, fill it higher, or weigh the catch: its marks are wrong in every catch"
                    + " alike."),
    /** The density by which a weighed liquid becomes a volume. */
    DENSITY(
            "the density of the liquid",
            "Measure the density more closely, at the temperature of the catch, or read the catch in a graduated"
                    + " container: a wrong density is wrong in every catch alike."),
    /** Material that misses the containers. */
    SPILLAGE(
            "material that may miss the containers",
            "Catch all of it: a larger tarp, a chute, no wind; of a liquid, a hose that ends in the container."),
    /** The start-up that is left in a catch. */
    TRANSIENT(
            "what start and stop add to the catch",
            "Prime the conveyor, or fill the line and let the air out, and let catch and count cover the same window."),
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
