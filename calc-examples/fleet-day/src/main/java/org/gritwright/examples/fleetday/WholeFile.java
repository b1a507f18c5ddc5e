package org.gritwright.examples.fleetday;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * Writes a file as a whole or not at all.
 *
 * <p>The content goes into a temporary file in the same folder, is forced onto the disk, and takes the file's name in
 * one step. A failure or a crash on the way leaves the old file, or none, and never half a file. In a folder that itself gets its
 * name only when it is complete, files are forced onto the disk together, which takes a fraction of the time.
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
            throw named(file, e);
        } finally {
            Files.deleteIfExists(temporary);
        }
    }

    /** Writes a file of a folder that isn't complete yet; if that fails there is none. */
    static void writeUnforced(Path file, Content content) throws IOException {
        boolean isWhole = false;
        try (OutputStream out = new BufferedOutputStream(
                Files.newOutputStream(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE))) {
            content.writeTo(out);
            out.flush();
            isWhole = true;
        } catch (IOException e) {
            throw named(file, e);
        } finally {
            if (!isWhole) {
                Files.deleteIfExists(file);
            }
        }
    }

    /** Forces all files of a folder, and of those in it, onto the disk. */
    static void force(Path folder) throws IOException {
        List<Path> files;
        try (Stream<Path> all = Files.walk(folder)) {
            files = all.filter(Files::isRegularFile).toList();
        }
        Parallel.each(files, (file, place) -> {
            try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
                channel.force(true);
                return file;
            } catch (IOException e) {
                throw named(file, e);
            }
        });
    }

    /** Under the name that the user knows. */
    private static FileSystemException named(Path file, IOException e) {
        FileSystemException failure = new FileSystemException(file.toString(), null, Failure.reason(e));
        failure.initCause(e);
        return failure;
    }
}
