package org.gritwright.core.solution;

/** On which side of the eutectic a solution is. The freezing point turns there: one temperature belongs to two strengths. */
public enum Side {
    /** Weaker than the eutectic, or the eutectic itself: what freezes out first is ice, and water makes it freeze warmer. */
    UP_TO_EUTECTIC,
    /** Nobody can tell: between the eutectics of two sources, or so near that the share's own uncertainty reaches across. */
    UNDECIDED,
    /** Stronger than the eutectic: what drops out first is the salt with crystal water, and more salt makes it do so warmer. */
    BEYOND_EUTECTIC
}
