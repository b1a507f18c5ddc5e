package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;

/**
 * A hidden folder in which a run writes before it has all, and beside it a file that the run holds locked as long as it lives: the system lets
 * go of it when the process dies, however it dies. A folder is only ever cleaned away by whoever gets that lock.
 */
final class Unfinished implements AutoCloseable {
    /**
     * Of this Java virtual machine. Its own lock files are never opened again: where a process opens a file twice, closing it once lets go
     * of the lock.
     */
    private static final UUID HERE = UUID.randomUUID();

    private static final String PREFIX = ".fleet-memory_";
    private static final String LOCK = ".lock";
    private static final String PART = ".part";
    private static final Pattern NAME = Pattern.compile("[0-9a-f-]{36}_[0-9a-f-]{36}");

    private final Path folder;
    private final Path lock;
    private final FileChannel held;

    private Unfinished(Path folder, Path lock, FileChannel held) {
        this.folder = folder;
        this.lock = lock;
        this.held = held;
    }

    /** A new one; what dead runs left beside it is cleaned away first, as far as that can be done. */
    static Unfinished in(Path parent) throws IOException {
        clean(parent);
        String name = PREFIX + HERE + "_" + UUID.randomUUID();
        Path lock = parent.resolve(name + LOCK);
        Path folder = parent.resolve(name + PART);
        FileChannel held = FileChannel.open(lock, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        boolean isBegun = false;
        try {
            // The folder comes after the lock: there is none that nobody holds.
            hold(held, lock);
            Files.createDirectory(folder);
            isBegun = true;
        } finally {
            if (!isBegun) {
                held.close();
                Files.deleteIfExists(lock);
            }
        }
        return new Unfinished(folder, lock, held);
    }

    /** On a file system without locks, as some shares are, nobody may ever clean up: without its lock file a folder stays. */
    private static void hold(FileChannel held, Path lock) throws IOException {
        try {
            held.lock();
        } catch (IOException e) {
            Files.deleteIfExists(lock);
        }
    }

    Path folder() {
        return folder;
    }

    /** Removes what wasn't moved elsewhere. */
    @Override
    public void close() throws IOException {
        try {
            remove(folder);
        } finally {
            held.close();
            Files.deleteIfExists(lock);
        }
    }

    private static void clean(Path parent) {
        for (Path lock : locks(parent)) {
            String name = lock.getFileName().toString();
            Path folder = parent.resolve(name.substring(0, name.length() - LOCK.length()) + PART);
            try (FileChannel channel = FileChannel.open(lock, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS);
                    FileLock mine = channel.tryLock()) {
                if (mine != null) {
                    remove(folder);
                    Files.deleteIfExists(lock);
                }
            } catch (IOException | OverlappingFileLockException ignored) {
                // Of another user, say, or with something in it that no run wrote: it stays, and harms nobody.
            }
        }
    }

    /** Those of other Java virtual machines. */
    private static List<Path> locks(Path parent) {
        List<Path> locks = new ArrayList<>();
        try (DirectoryStream<Path> all = Files.newDirectoryStream(parent, PREFIX + "*" + LOCK)) {
            for (Path one : all) {
                String name = one.getFileName().toString();
                String id = name.substring(PREFIX.length(), name.length() - LOCK.length());
                if (NAME.matcher(id).matches() && !id.startsWith(HERE.toString())) {
                    locks.add(one);
                }
            }
        } catch (IOException | DirectoryIteratorException ignored) {
            // What can't be listed can't be cleaned; whether anything can be written there is found out next.
        }
        return locks;
    }

    /** Files and nothing else: a folder with another folder in it, or a link in its place, is none of ours. */
    private static void remove(Path folder) throws IOException {
        if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        try (DirectoryStream<Path> begun = Files.newDirectoryStream(folder)) {
            for (Path page : begun) {
                if (Files.isRegularFile(page, LinkOption.NOFOLLOW_LINKS)) {
                    Files.delete(page);
                }
            }
        }
        Files.delete(folder);
    }
}
