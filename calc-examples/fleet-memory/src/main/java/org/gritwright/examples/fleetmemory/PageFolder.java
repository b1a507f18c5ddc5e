package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;

/** Writes pages into a new folder: all of them or none. What stands under its name already is never touched. */
final class PageFolder {
    private PageFolder() {}

    /** So that a wrong name is found before the work. */
    static void check(Path folder) throws BadInputException {
        if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
            throw new BadInputException(
                    "can't write pages to " + folder + ": it is there already; name a folder that isn't there yet");
        }
        parent(folder);
    }

    private static Path parent(Path folder) throws BadInputException {
        Path parent = folder.toAbsolutePath().getParent();
        if (parent == null || !Files.isDirectory(parent)) {
            throw new BadInputException("can't write pages to " + folder + ": there is no folder " + parent);
        }
        if (!Files.isWritable(parent)) {
            throw new BadInputException("can't write pages to " + folder + ": nothing may be written into " + parent);
        }
        return parent;
    }

    /** @param pages by file name */
    static void write(Path folder, Map<String, String> pages) throws IOException, BadInputException {
        check(folder);
        try (Unfinished unfinished = Unfinished.in(parent(folder))) {
            for (Map.Entry<String, String> page : pages.entrySet()) {
                Files.write(
                        unfinished.folder().resolve(page.getKey()),
                        page.getValue().getBytes(StandardCharsets.UTF_8));
            }
            check(folder);
            Files.move(unfinished.folder(), folder.toAbsolutePath(), StandardCopyOption.ATOMIC_MOVE);
        }
    }
}
