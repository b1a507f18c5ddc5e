package org.gritwright.examples.telemetry;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.Arrays;
import java.util.List;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;

/** A folder on the machine, or on whatever file system a cluster has. */
final class Folder {
    private final FileSystem files;
    private final Path path;

    private Folder(FileSystem files, Path path) {
        this.files = files;
        this.path = path;
    }

    static Folder of(String path, Configuration configuration) throws IOException {
        Path place = new Path(path);
        return new Folder(place.getFileSystem(configuration), place);
    }

    /** A folder that has to be there. */
    static Folder existing(String what, String path, Configuration configuration)
            throws IOException, BadInputException {
        Folder folder = of(path, configuration);
        if (!folder.exists()) {
            throw new BadInputException("can't read " + what + ": there is no folder " + path);
        }
        if (!folder.files.getFileStatus(folder.path).isDirectory()) {
            throw new BadInputException("can't read " + what + ": " + path + " is no folder");
        }
        return folder;
    }

    boolean exists() throws IOException {
        return files.exists(path);
    }

    /** A name in it. */
    String child(String name) {
        return new Path(path, name).toString();
    }

    Folder inside(String name) {
        return new Folder(files, new Path(path, name));
    }

    /** The files with an ending, in the order of their names. */
    List<FileStatus> filesEndingIn(String ending) throws IOException {
        return Arrays.stream(files.listStatus(path))
                .filter(one -> one.isFile() && one.getPath().getName().endsWith(ending))
                .sorted()
                .toList();
    }

    InputStream open(FileStatus file) throws IOException {
        return files.open(file.getPath());
    }

    /** A new file, never in place of another. */
    OutputStream create(String name) throws IOException {
        // No file of checksums beside each, as the machine's own file system would have.
        files.setWriteChecksum(false);
        return files.create(new Path(path, name), false);
    }

    void remove() throws IOException {
        files.delete(path, true);
    }

    /** What was written under another name gets its own. */
    void renameTo(Folder other) throws IOException {
        if (!files.rename(path, other.path)) {
            throw new IOException("can't rename " + path + " to " + other.path);
        }
    }

    @Override
    public String toString() {
        return path.toString();
    }
}
