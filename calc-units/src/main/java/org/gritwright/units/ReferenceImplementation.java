package org.gritwright.units;

import java.util.ServiceConfigurationError;
import tech.units.indriya.function.Calculus;
import tech.units.indriya.function.DefaultNumberSystem;

/**
 * Indriya, made usable on any thread.
 *
 * <p>Indriya looks up its own number system when the first unit is made, with the context class loader of the thread that
 * happens to make it. Where that loader doesn't see Indriya (threads of the common pool under a nested class loader,
 * the platform's loader), sees another copy of it, or belongs to an application that was stopped, the look-up fails
 * within static initializers, and the classes are lost for the life of the virtual machine.
 *
 * <p>So whatever touches Indriya first here goes through {@link #prepare}. It asks Indriya, and only when Indriya has
 * no answer gives it the system that the look-up was for. A context class loader is neither needed nor set: some
 * threads don't let theirs be set, and others that run at the same time would go without.
 */
final class ReferenceImplementation {

    private ReferenceImplementation() {}

    /**
     * A number system that the application has set is left alone. One that Indriya finds by itself is what it would have found
     * without us; where it finds none, the application would have met the failure.
     */
    static void prepare() {
        try {
            Calculus.currentNumberSystem();
        } catch (RuntimeException | ServiceConfigurationError | LinkageError lookUpFailed) {
            Calculus.setCurrentNumberSystem(new DefaultNumberSystem());
        }
    }
}
