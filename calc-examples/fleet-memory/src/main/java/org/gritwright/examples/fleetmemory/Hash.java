package org.gritwright.examples.fleetmemory;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4), in lower-case hexadecimal digits. */
final class Hash {
    private Hash() {}

    static String of(String text) {
        MessageDigest digest = digest();
        digest.update(text.getBytes(StandardCharsets.UTF_8));
        return hex(digest);
    }

    static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    static String hex(MessageDigest digest) {
        return HexFormat.of().formatHex(digest.digest());
    }
}
