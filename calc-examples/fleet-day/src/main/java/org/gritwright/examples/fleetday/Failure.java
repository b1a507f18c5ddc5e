package org.gritwright.examples.fleetday;

import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;

/** Failures in a person's words. */
final class Failure {
    private Failure() {}

    /** The file and what is wrong with it, or what went wrong first; without a stack trace. */
    static String words(Throwable failure) {
        return failure instanceof FileSystemException file ? file.getFile() + ": " + reason(file) : reason(failure);
    }

    /** What went wrong, without the file. */
    static String reason(Throwable failure) {
        if (failure instanceof FileSystemException file) {
            return reason(file);
        }
        if (failure.getCause() != null) {
            return words(failure.getCause());
        }
        String message = failure.getMessage();
        return message == null || message.isBlank() ? failure.getClass().getSimpleName() : message;
    }

    /** Some of these exceptions carry the path as their whole message. */
    private static String reason(FileSystemException failure) {
        if (failure instanceof NoSuchFileException) {
            return "no such file or folder";
        }
        if (failure instanceof AccessDeniedException) {
            return "access denied";
        }
        if (failure instanceof FileAlreadyExistsException) {
            return "there is a file of that name";
        }
        return failure.getReason() == null ? failure.getClass().getSimpleName() : failure.getReason();
    }
}
