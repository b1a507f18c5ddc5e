import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.GateType;
import org.gritwright.examples.spreaderplugin.DiamondGate;
import org.gritwright.examples.spreaderplugin.ReciprocatingFloor;

/** A conveyor type and a gate type from outside. On a class path, META-INF/services says the same. */
module org.gritwright.examples.spreaderplugin {
    requires org.gritwright.core;
    requires static org.jspecify;

    provides ConveyorType with
            ReciprocatingFloor;
    provides GateType with
            DiamondGate;
}
