package org.gritwright.examples.fleetmemory;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Rows of texts on the disk, to be read again in their order. The file is gone when it is closed, and when the program dies. */
final class Spool implements AutoCloseable {
    private static final int NONE = -1;

    private final Path folder;
    private final FileChannel channel;
    private final DataOutputStream out;
    private long rows;

    private Spool(Path folder, FileChannel channel) {
        this.folder = folder;
        this.channel = channel;
        this.out = new DataOutputStream(new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16));
    }

    static Spool in(Path folder) throws BadInputException {
        try {
            return new Spool(
                    folder,
                    FileChannel.open(
                            folder.resolve(".fleet-memory_" + UUID.randomUUID() + ".spool"),
                            StandardOpenOption.CREATE_NEW,
                            StandardOpenOption.READ,
                            StandardOpenOption.WRITE,
                            StandardOpenOption.DELETE_ON_CLOSE));
        } catch (IOException e) {
            throw failed(folder, e);
        }
    }

    /** Takes a row. */
    interface Each {
        void take(List<Optional<String>> row) throws SQLException, BadInputException;
    }

    void add(List<Optional<String>> row) throws BadInputException {
        try {
            out.writeInt(row.size());
            for (Optional<String> text : row) {
                if (text.isPresent()) {
                    byte[] bytes = text.get().getBytes(StandardCharsets.UTF_8);
                    out.writeInt(bytes.length);
                    out.write(bytes);
                } else {
                    out.writeInt(NONE);
                }
            }
            rows++;
        } catch (IOException e) {
            throw failed(folder, e);
        }
    }

    long rows() {
        return rows;
    }

    /** All rows, in the order in which they came. */
    void forEach(Each each) throws SQLException, BadInputException {
        try {
            out.flush();
            channel.position(0);
            // Not closed: that would close the channel, and the file is read more than once.
            DataInputStream in =
                    new DataInputStream(new BufferedInputStream(Channels.newInputStream(channel), 1 << 16));
            for (long row = 0; row < rows; row++) {
                int size = in.readInt();
                List<Optional<String>> texts = new ArrayList<>(size);
                for (int i = 0; i < size; i++) {
                    int length = in.readInt();
                    texts.add(
                            length == NONE
                                    ? Optional.empty()
                                    : Optional.of(new String(in.readNBytes(length), StandardCharsets.UTF_8)));
                }
                each.take(texts);
            }
        } catch (IOException e) {
            throw failed(folder, e);
        }
    }

    private static BadInputException failed(Path folder, IOException why) {
        return new BadInputException("what was read can't be put down in " + folder + " meanwhile: "
                + Failure.words(why) + "; nothing was changed");
    }

    @Override
    public void close() throws BadInputException {
        try {
            channel.close();
        } catch (IOException e) {
            throw failed(folder, e);
        }
    }
}
