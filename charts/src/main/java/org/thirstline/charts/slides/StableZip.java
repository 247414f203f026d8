package org.thirstline.charts.slides;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Packs a ZIP file anew, its entries in the order of their names and without times. Stateless and thread-safe. */
final class StableZip {

    /** The earliest time that the format can say; written without a zone. */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

    private static final String FIRST = "[Content_Types].xml";

    private StableZip() {}

    static byte[] of(byte[] zip) throws IOException {
        Map<String, byte[]> entries = new TreeMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                entries.put(entry.getName(), in.readAllBytes());
            }
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(zip.length);
        try (ZipOutputStream out = new ZipOutputStream(bytes)) {
            byte[] types = entries.remove(FIRST);
            if (types != null) {
                put(FIRST, types, out);
            }
            for (Map.Entry<String, byte[]> entry : entries.entrySet()) {
                put(entry.getKey(), entry.getValue(), out);
            }
        }
        return bytes.toByteArray();
    }

    private static void put(String name, byte[] content, ZipOutputStream out) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(NO_TIME);
        out.putNextEntry(entry);
        out.write(content);
        out.closeEntry();
    }
}
