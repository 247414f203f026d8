package org.thirstline.io.tables;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 checksums in lower-case hexadecimal. */
public final class Sha256 {

    private static final int BUFFER = 1 << 16;

    private Sha256() {}

    /** Returns the checksum of a file. */
    public static String of(Path file) {
        MessageDigest digest = digest();
        byte[] buffer = new byte[BUFFER];
        try (InputStream stream = Files.newInputStream(file)) {
            for (int read = stream.read(buffer); read >= 0; read = stream.read(buffer)) {
                digest.update(buffer, 0, read);
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    /** Returns the checksum of bytes. */
    public static String of(byte[] bytes) {
        return HexFormat.of().formatHex(digest().digest(bytes));
    }

    private static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java has SHA-256", impossible);
        }
    }
}
