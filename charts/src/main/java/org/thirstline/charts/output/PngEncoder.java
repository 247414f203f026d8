package org.thirstline.charts.output;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/** Writes an opaque image as PNG (ISO/IEC 15948) with its resolution and nothing that changes from run to run. */
final class PngEncoder {

    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
    private static final int BYTES_PER_PIXEL = 3;
    private static final int FILTER_UP = 2;
    private static final int ROWS_AT_ONCE = 64;

    /** The last of the fast levels: less than half the time of the next one for a sixth more bytes. */
    private static final int LEVEL = 3;

    private static final double METRES_PER_INCH = 0.0254;

    private PngEncoder() {}

    /**
     * Encodes an image.
     *
     * @param image of type TYPE_INT_RGB
     * @param dpi resolution to write down
     */
    static byte[] encode(BufferedImage image, double dpi) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 16);
        DataOutputStream out = new DataOutputStream(bytes);
        out.write(SIGNATURE);
        chunk(out, "IHDR", header(image.getWidth(), image.getHeight()));
        chunk(out, "pHYs", resolution(dpi));
        chunk(out, "IDAT", pixels(image));
        chunk(out, "IEND", new byte[0]);
        return bytes.toByteArray();
    }

    private static byte[] header(int width, int height) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.writeInt(width);
        out.writeInt(height);
        out.write(new byte[] {8, 2, 0, 0, 0});
        return bytes.toByteArray();
    }

    private static byte[] resolution(double dpi) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        int perMetre = (int) Math.round(dpi / METRES_PER_INCH);
        out.writeInt(perMetre);
        out.writeInt(perMetre);
        out.writeByte(1);
        return bytes.toByteArray();
    }

    /** Rows as differences to the row above: charts are mostly equal rows. */
    private static byte[] pixels(BufferedImage image) throws IOException {
        int[] rgb = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        int width = image.getWidth();
        int rowBytes = 1 + BYTES_PER_PIXEL * width;
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 16);
        Deflater deflater = new Deflater(LEVEL);
        try (DeflaterOutputStream out = new DeflaterOutputStream(bytes, deflater, 1 << 15)) {
            byte[] block = new byte[ROWS_AT_ONCE * rowBytes];
            byte[] equalRow = new byte[rowBytes];
            equalRow[0] = FILTER_UP;
            for (int first = 0; first < image.getHeight(); first += ROWS_AT_ONCE) {
                int rows = Math.min(ROWS_AT_ONCE, image.getHeight() - first);
                for (int row = 0; row < rows; row++) {
                    System.arraycopy(equalRow, 0, block, row * rowBytes, rowBytes);
                    mark(block, row * rowBytes + 1, rgb, first + row, width);
                }
                out.write(block, 0, rows * rowBytes);
            }
        } finally {
            deflater.end();
        }
        return bytes.toByteArray();
    }

    /** Writes the pixels that are not as those above. Most are; they are passed over many at a time and stay zero. */
    private static void mark(byte[] block, int from, int[] rgb, int y, int width) {
        int here = y * width;
        int x = changed(rgb, here, 0, width);
        while (x < width) {
            int above = y == 0 ? 0 : rgb[here - width + x];
            difference(block, from + BYTES_PER_PIXEL * x, rgb[here + x], above);
            x = changed(rgb, here, x + 1, width);
        }
    }

    /** The first pixel of a row, from one on, that is not as the one above; the width if there is none. */
    private static int changed(int[] rgb, int here, int from, int width) {
        if (here == 0) {
            return from;
        }
        int equal = Arrays.mismatch(rgb, here + from, here + width, rgb, here - width + from, here);
        return equal < 0 ? width : from + equal;
    }

    private static void difference(byte[] block, int at, int pixel, int above) {
        block[at] = (byte) ((pixel >> 16) - (above >> 16));
        block[at + 1] = (byte) ((pixel >> 8) - (above >> 8));
        block[at + 2] = (byte) (pixel - above);
    }

    private static void chunk(DataOutputStream out, String name, byte[] content) throws IOException {
        byte[] type = name.getBytes(StandardCharsets.US_ASCII);
        CRC32 crc = new CRC32();
        crc.update(type);
        crc.update(content);
        out.writeInt(content.length);
        out.write(type);
        out.write(content);
        out.writeInt((int) crc.getValue());
    }
}
