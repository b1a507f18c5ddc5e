package org.gritwright.units.spi;

import tech.units.indriya.spi.AbstractServiceProvider;

/** An embedder's provider that stands back behind almost every other. */
public final class ProviderOfNegativePriority extends AbstractServiceProvider {

    /** Made by the service loader. */
    public ProviderOfNegativePriority() {}

    @Override
    public int getPriority() {
        return Integer.MIN_VALUE + 1;
    }

    @Override
    public String toString() {
        return "negative";
    }
}
