package org.thirstline.io.weather;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/** Goes through the files of a zip archive one after the other, without unpacking it. */
final class ZipFiles {

    private static final String WORKBOOK = "[Content_Types].xml";

    /** Takes one file of an archive. */
    interface Visitor {
        /** Reads it; the lines need not be read to their end. */
        void visit(LineReader lines);
    }

    private ZipFiles() {}

    /** Returns whether a file is a zip archive; false if it cannot be read, which others will say. */
    static boolean isZip(Path file) {
        if (!Files.isRegularFile(file)) {
            return false;
        }
        try (InputStream in = Files.newInputStream(file)) {
            byte[] start = in.readNBytes(4);
            return start.length == 4 && start[0] == 'P' && start[1] == 'K' && start[2] == 3 && start[3] == 4;
        } catch (IOException e) {
            return false;
        }
    }

    static void visit(Path file, Visitor visitor) {
        try (ZipInputStream zip = new ZipInputStream(Files.newInputStream(file))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (entry.getName().equals(WORKBOOK)) {
                    throw new InputException(InputError.FILE_NOT_TEXT, "a workbook", "export the sheet as CSV")
                            .at(file.toString());
                }
                if (!entry.isDirectory()) {
                    visitor.visit(new LineReader(file + "!" + entry.getName(), new KeptOpen(zip)));
                }
            }
        } catch (IOException | IllegalArgumentException e) {
            throw unreadable(file, e);
        }
    }

    private static InputException unreadable(Path file, Exception cause) {
        String reason = cause.getMessage() == null ? "the zip archive is damaged" : cause.getMessage();
        return new InputException(InputError.FILE_UNREADABLE, reason).at(file.toString());
    }
}
