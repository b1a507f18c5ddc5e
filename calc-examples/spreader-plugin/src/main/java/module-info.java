import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.FlowMeterType;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.PumpType;
import org.gritwright.examples.spreaderplugin.DiamondGate;
import org.gritwright.examples.spreaderplugin.HosePump;
import org.gritwright.examples.spreaderplugin.PaddleWheelMeter;
import org.gritwright.examples.spreaderplugin.ReciprocatingFloor;

/** Types of a conveyor, a gate, a pump and a flow meter from outside. On a class path, META-INF/services says the same. */
module org.gritwright.examples.spreaderplugin {
    requires org.gritwright.core;
    requires static org.jspecify;

    provides ConveyorType with
            ReciprocatingFloor;
    provides FlowMeterType with
            PaddleWheelMeter;
    provides GateType with
            DiamondGate;
    provides PumpType with
            HosePump;
}
