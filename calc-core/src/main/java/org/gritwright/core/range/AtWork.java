package org.gritwright.core.range;

/** Whether something was, while a drive was measured, as it is at work. */
public enum AtWork {
    /** It was: the hopper loaded, the engine at its lowest working speed, a function running, or not on this truck. */
    YES,
    /** It wasn't. */
    NO,
    /** Nobody says. */
    NOT_SAID
}
