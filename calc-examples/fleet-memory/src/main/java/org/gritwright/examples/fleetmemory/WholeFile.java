package org.gritwright.examples.fleetmemory;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;

/** Writes a file as a whole or not at all: under another name in a hidden folder beside it, forced onto the disk, which then takes the file's name. */
final class WholeFile {
    private static final String UNNAMED = "unnamed";

    private WholeFile() {}

    /** Writes the content of a file. */
    interface Content<T> {
        T writeTo(OutputStream out) throws IOException, SQLException, BadInputException;
    }

    /** Looks at what was written before it takes its name. */
    interface Inspection {
        void look(Path written) throws IOException, SQLException, BadInputException;
    }

    static <T> T write(Path file, Content<T> content, Inspection inspection)
            throws IOException, SQLException, BadInputException {
        if (Files.isDirectory(file)) {
            throw new BadInputException("can't write " + file + ": it is a folder");
        }
        requireNew(file);
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw new BadInputException("can't write " + file + ": there is no folder " + folder);
        }
        if (!Files.isWritable(folder)) {
            throw new BadInputException("can't write " + file + ": nothing may be written into " + folder);
        }
        try (Unfinished unfinished = Unfinished.in(folder)) {
            Path temporary = unfinished.folder().resolve(UNNAMED);
            T result;
            try (FileChannel channel =
                            FileChannel.open(temporary, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                    OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel))) {
                result = content.writeTo(out);
                out.flush();
                channel.force(true);
            }
            inspection.look(temporary);
            requireNew(file);
            Files.move(temporary, file, StandardCopyOption.ATOMIC_MOVE);
            return result;
        }
    }

    /** A day that somebody typed, the database itself or the last backup would be lost. */
    private static void requireNew(Path file) throws BadInputException {
        if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new BadInputException(
                    "can't write " + file + ": it is there already; name a file that isn't there yet");
        }
    }
}
