package org.gritwright.examples.telemetry;

import java.io.IOException;
import java.util.UUID;
import org.apache.hadoop.conf.Configuration;

/**
 * A folder that is there as a whole or not at all: it is filled under another name beside it, and takes its own at the end. One that
 * is there already is refused.
 */
final class NewFolder implements AutoCloseable {
    private final Folder wanted;
    private final Folder unfinished;
    private boolean isDone;

    private NewFolder(Folder wanted, Folder unfinished) {
        this.wanted = wanted;
        this.unfinished = unfinished;
    }

    static NewFolder of(String path, Configuration configuration) throws IOException, BadInputException {
        Folder wanted = Folder.of(path, configuration);
        if (wanted.exists()) {
            throw new BadInputException("won't write into " + path + ": it is there already; give a folder that isn't");
        }
        return new NewFolder(wanted, Folder.of(path + "." + UUID.randomUUID() + ".part", configuration));
    }

    Folder unfinished() {
        return unfinished;
    }

    void finish() throws IOException {
        unfinished.renameTo(wanted);
        isDone = true;
    }

    @Override
    public void close() throws IOException {
        if (!isDone) {
            unfinished.remove();
        }
    }
}
