package org.gritwright.core.record;

import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.ToDo;

/**
 * One thing to do as it stands in a record.
 *
 * @param step what
 * @param material the name of the material it is about; none where it is a matter of the truck
 * @param setting the setting it is about; none where it is a matter of the truck, or there is nothing to set
 */
public record ToDoOutcome(NextStep step, Optional<String> material, Optional<Quantity<?>> setting) {
    static ToDoOutcome of(ToDo toDo) {
        return new ToDoOutcome(
                toDo.step(),
                toDo.point().map(point -> point.material().name()),
                toDo.point().flatMap(point -> point.setting().quantity()));
    }
}
