package org.thirstline.validation.broken;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * A slip that could have been made in one method: a number with two digits exchanged or a digit lost, or the first operation of a kind turned
 * into another.
 *
 * @param family the family of checks that has to notice
 * @param className where
 * @param method where in it
 * @param from what is right: a number, or one of + - * /
 * @param to what stands there instead
 */
record Slip(String family, String className, String method, String from, String to) {

    private static final Path FILE = Path.of("src/test/resources/validation-page/slips.csv");

    static List<Slip> read() throws IOException {
        return Files.readAllLines(FILE).stream()
                .filter(line -> !line.startsWith("#"))
                .map(line -> line.split(",", -1))
                .map(cells -> new Slip(cells[0], cells[1], cells[2], cells[3], cells[4]))
                .toList();
    }

    boolean isOperation() {
        return from.matches("[-+*/]");
    }

    boolean isIn(String binaryName) {
        return className.equals(binaryName);
    }

    /** What was done, in words. */
    String words() {
        String place = "`" + className.substring(className.lastIndexOf('.') + 1) + "." + method + "`";
        return isOperation()
                ? "the first %s of %s is %s".formatted(from, place, to)
                : "%s in %s is %s".formatted(from, place, to);
    }
}
