package org.thirstline.charts.output;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.thirstline.charts.ChartDocument;

/** Writes charts to files; a file appears whole or not at all. Thread-safe. */
public final class ChartWriter {

    private ChartWriter() {}

    /**
     * Writes a chart in some formats.
     *
     * @param chart the chart
     * @param base path without suffix; its folder is made if need be
     * @param formats what to write
     * @return the files written, in the order of the formats
     */
    public static List<Path> write(ChartDocument chart, Path base, Set<ChartFormat> formats) throws IOException {
        Path folder = base.toAbsolutePath().getParent();
        if (folder != null) {
            Files.createDirectories(folder);
        }
        List<Path> written = new ArrayList<>();
        for (ChartFormat format : ChartFormat.values()) {
            if (formats.contains(format)) {
                Path file = base.resolveSibling(base.getFileName() + format.suffix());
                place(file, bytes(chart, format));
                written.add(file);
            }
        }
        return written;
    }

    /**
     * Returns a chart as the bytes of one format.
     *
     * @param chart the chart
     * @param format which format
     */
    public static byte[] bytes(ChartDocument chart, ChartFormat format) {
        return switch (format) {
            case SVG -> SvgOutput.standalone(chart).getBytes(StandardCharsets.UTF_8);
            case PNG -> PngOutput.bytes(chart, 1);
            case PNG_2X -> PngOutput.bytes(chart, 2);
            case PDF -> PdfOutput.bytes(chart);
            case CSV -> chart.data().csv().getBytes(StandardCharsets.UTF_8);
        };
    }

    private static void place(Path file, byte[] content) throws IOException {
        Path beside = file.resolveSibling(file.getFileName() + ".part");
        Files.write(beside, content);
        Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
    }
}
