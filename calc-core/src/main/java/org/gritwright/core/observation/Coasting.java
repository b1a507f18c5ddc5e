package org.gritwright.core.observation;

/** What became of the conveyor's run-down after the stop: mass and count must cover the same window. */
public enum Coasting {
    /** Its material was caught and its revolutions were counted: the usual catch from rest to rest. */
    IN_BOTH("caught and counted", true),
    /** Neither was its material caught nor its revolutions counted, as with a diverter chute. */
    IN_NEITHER("neither caught nor counted", true),
    /** Its material was caught, its revolutions were not counted. */
    CAUGHT_ONLY("caught but not counted", false),
    /** Its revolutions were counted, its material was not caught. */
    COUNTED_ONLY("counted but not caught", false);

    private final String words;
    private final boolean sameWindow;

    Coasting(String words, boolean sameWindow) {
        this.words = words;
        this.sameWindow = sameWindow;
    }

    /**
     * In words, for sentences.
     *
     * @return for example "caught but not counted"
     */
    public String words() {
        return words;
    }

    /**
     * Whether mass and count cover the same window.
     *
     * @return true if they do
     */
    public boolean isSameWindow() {
        return sameWindow;
    }
}
