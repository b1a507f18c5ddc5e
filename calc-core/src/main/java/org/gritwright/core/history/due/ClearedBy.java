package org.gritwright.core.history.due;

/** What clears something that is due. */
public enum ClearedBy {
    /** A verification that passes; a calibration or a correction with one too. */
    VERIFICATION,
    /** A calibration only, however well the old value is proven. */
    CALIBRATION
}
