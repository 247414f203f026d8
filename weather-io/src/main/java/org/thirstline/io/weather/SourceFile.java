package org.thirstline.io.weather;

import java.nio.file.Path;

/**
 * A file that was read.
 *
 * @param path where it lies
 * @param sha256 SHA-256 of its bytes on disk, in hexadecimal
 */
public record SourceFile(Path path, String sha256) {}
