package org.gritwright.units.architecture.offenders;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.gritwright.units.TradeSystem;

/** Holds state in static fields, on purpose. */
@SuppressWarnings({"unused", "MutablePublicArray", "NonFinalStaticField", "MutableConstantField"})
public final class StaticStateHolder {
    static int counter;
    static final int[] ARRAY = {1};
    static final ArrayList<String> GROWING_LIST = new ArrayList<>();
    static final AtomicInteger ATOMIC = new AtomicInteger();
    static final StringBuilder BUILDER = new StringBuilder();
    static final Object ANYTHING = new Object();

    // And four that are allowed.
    static final int NUMBER = 1;
    static final String TEXT = "text";
    static final TradeSystem SYSTEM = TradeSystem.US;
    static final List<String> LIST = List.of("one");

    private StaticStateHolder() {}
}
