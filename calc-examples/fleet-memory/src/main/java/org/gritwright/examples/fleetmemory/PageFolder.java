package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;
import java.util.UUID;

/** Writes pages into a new folder: all of them or none. What stands under its name already is never touched. */
final class PageFolder {
    private PageFolder() {}

    /** So that a wrong name is found before the work. */
    static void check(Path folder) throws BadInputException {
        if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
            throw new BadInputException(
                    "can't write pages to " + folder + ": it is there already; name a folder that isn't there yet");
        }
        Path parent = folder.toAbsolutePath().getParent();
        if (parent == null || !Files.isDirectory(parent)) {
            throw new BadInputException("can't write pages to " + folder + ": there is no folder " + parent);
        }
    }

    /** @param pages by file name */
    static void write(Path folder, Map<String, String> pages) throws IOException, BadInputException {
        check(folder);
        Path unfinished = folder.toAbsolutePath().resolveSibling("." + UUID.randomUUID() + ".part");
        Files.createDirectory(unfinished);
        boolean isWhole = false;
        try {
            for (Map.Entry<String, String> page : pages.entrySet()) {
                Files.write(unfinished.resolve(page.getKey()), page.getValue().getBytes(StandardCharsets.UTF_8));
            }
            check(folder);
            Files.move(unfinished, folder.toAbsolutePath(), StandardCopyOption.ATOMIC_MOVE);
            isWhole = true;
        } finally {
            if (!isWhole) {
                remove(unfinished);
            }
        }
    }

    /** What was begun: files and no folders. */
    private static void remove(Path unfinished) throws IOException {
        try (DirectoryStream<Path> begun = Files.newDirectoryStream(unfinished)) {
            for (Path page : begun) {
                Files.delete(page);
            }
        }
        Files.delete(unfinished);
    }
}
