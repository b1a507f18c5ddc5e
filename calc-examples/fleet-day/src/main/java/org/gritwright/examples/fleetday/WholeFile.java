package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/**
 * Writes a file as a whole or not at all.
 *
 * <p>The content goes into a temporary file in the same folder, is forced onto the disk, and takes the file's name in
 * one step. A failure or a crash on the way leaves the old file, or none, and never half a file.
 */
final class WholeFile {
    private WholeFile() {}

    /** Writes the content of a file. */
    @FunctionalInterface
    interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    static void write(Path file, Content content) throws IOException {
        Path temporary = file.resolveSibling("." + UUID.randomUUID() + ".part");
        try {
            try (FileChannel channel =
                            FileChannel.open(temporary, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                    OutputStream out = Channels.newOutputStream(channel)) {
                content.writeTo(out);
                out.flush();
                channel.force(true);
            }
            Files.move(temporary, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            // Under the name that the user knows.
            FileSystemException failure = new FileSystemException(file.toString(), null, Failure.reason(e));
            failure.initCause(e);
            throw failure;
        } finally {
            Files.deleteIfExists(temporary);
        }
    }
}
