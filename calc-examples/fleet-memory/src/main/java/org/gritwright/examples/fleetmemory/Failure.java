package org.gritwright.examples.fleetmemory;

import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;

/** Failures in a person's words, without a stack trace. */
final class Failure {
    private Failure() {}

    static String words(Throwable failure) {
        Throwable cause = failure;
        while (cause.getCause() != null) {
            cause = cause.getCause();
        }
        if (cause instanceof NoSuchFileException) {
            return "no such file";
        }
        if (cause instanceof AccessDeniedException) {
            return "access denied";
        }
        if (cause instanceof CharacterCodingException) {
            return "its text isn't UTF-8; save it as UTF-8";
        }
        String message = cause instanceof FileSystemException file ? file.getReason() : cause.getMessage();
        return message == null || message.isBlank()
                ? cause.getClass().getSimpleName()
                : message.lines().findFirst().orElseThrow();
    }
}
