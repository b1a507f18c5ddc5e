package org.gritwright.examples.fleetmemory;

import java.util.List;

/**
 * What files hold together.
 *
 * @param replaced what an export says that stood once
 */
record Batch(List<Filed> documents, List<Replaced> replaced) {
    Batch {
        documents = List.copyOf(documents);
        replaced = List.copyOf(replaced);
    }
}
