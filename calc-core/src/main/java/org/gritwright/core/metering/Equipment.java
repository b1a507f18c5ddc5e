package org.gritwright.core.metering;

import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.SpreaderType;
import org.gritwright.core.spi.TypeId;

/** What conveyors, gates, pumps and flow meters have in common: the id of their type and its parameters, which say whether two are equal. */
abstract class Equipment implements Serializable {
    private static final long serialVersionUID = 1L;

    private final TypeId id;
    private final Parameters parameters;

    Equipment(SpreaderType type, TypeId id, Map<String, ?> given) {
        this.id = id;
        this.parameters = Border.parameters(type, id, given);
    }

    /**
     * The type's id.
     *
     * @return the id that the type gave when this was made, or that it was registered with
     */
    public final TypeId id() {
        return id;
    }

    /**
     * The checked parameters.
     *
     * @return the parameters, defaults filled in
     */
    public final Parameters parameters() {
        return parameters;
    }

    @Override
    public final boolean equals(Object other) {
        return other instanceof Equipment that
                && getClass() == that.getClass()
                && id.equals(that.id)
                && parameters.equals(that.parameters);
    }

    @Override
    public final int hashCode() {
        return Objects.hash(id, parameters);
    }

    /**
     * Type and parameters.
     *
     * @return for example "drag-chain, version 1 {barShare=0 %, chainPitch=2.25 in, teeth=7}"
     */
    @Override
    public final String toString() {
        return id + " " + parameters;
    }
}
