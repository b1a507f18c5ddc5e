package org.gritwright.core.fleet.day;

/** How a boom's rate is kept while the truck works. */
public enum BoomControl {
    /** By a flow meter, or a pump's turns, in a closed loop: what a nozzle gives too much the others lack, and the total stays right. */
    FLOW("kept by flow"),
    /** By pressure alone: what the nozzles give at it depends on their wear and on the liquid's density. */
    PRESSURE("kept by pressure");

    private final String words;

    BoomControl(String words) {
        this.words = words;
    }

    /**
     * In words.
     *
     * @return for example "kept by flow"
     */
    public String words() {
        return words;
    }
}
