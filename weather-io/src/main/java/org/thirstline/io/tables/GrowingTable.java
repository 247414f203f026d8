package org.thirstline.io.tables;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import org.thirstline.model.error.InputException;

/**
 * A table that is written part by part beside its place, survives an interruption at any byte, and moves into place when it is whole. Rows that
 * start with the same field make a part. Confined to one writing.
 */
public final class GrowingTable implements Closeable {

    private final Path place;
    private final Path partial;
    private final Path key;
    private final FileChannel channel;
    private final int parts;

    private GrowingTable(Path place, FileChannel channel, int parts) {
        this.place = place;
        this.partial = partial(place);
        this.key = key(place);
        this.channel = channel;
        this.parts = parts;
    }

    private static Path partial(Path place) {
        return place.resolveSibling(place.getFileName() + ".part");
    }

    private static Path key(Path place) {
        return place.resolveSibling(place.getFileName() + ".key");
    }

    /**
     * Starts a table, or continues one.
     *
     * @param place where the whole table will be; its folder is made if need be
     * @param input text that is the same only for the same input, options and version
     * @param header the header row
     * @param resume whether an unfinished table is continued after its last whole part; else it is refused
     * @throws InputException if there is an unfinished table and it is not to be continued, or was begun with other input
     */
    public static GrowingTable open(Path place, String input, byte[] header, boolean resume) {
        Path partial = partial(place);
        try {
            Files.createDirectories(place.toAbsolutePath().getParent());
            Whole whole = Files.exists(partial) ? Whole.of(partial) : new Whole(0, 0);
            boolean begun = whole.bytes() > 0;
            if (begun && !resume) {
                throw new InputException(TableError.UNFINISHED, partial, whole.parts());
            }
            if (begun
                    && !(Files.exists(key(place))
                            && Files.readString(key(place)).equals(input))) {
                throw new InputException(TableError.OF_OTHER_INPUT, partial);
            }
            if (!begun) {
                Files.writeString(key(place), input);
            }
            FileChannel channel = FileChannel.open(partial, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            channel.truncate(whole.bytes());
            channel.position(whole.bytes());
            GrowingTable table = new GrowingTable(place, channel, whole.parts());
            if (!begun) {
                table.append(header);
            }
            return table;
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** Returns the number of parts that were there already. */
    public int parts() {
        return parts;
    }

    /** Appends rows. */
    public void append(byte[] rows) {
        try {
            ByteBuffer buffer = ByteBuffer.wrap(rows);
            while (buffer.hasRemaining()) {
                channel.write(buffer);
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** Moves the whole table into place. */
    public void finish() throws IOException {
        channel.close();
        Files.move(partial, place, StandardCopyOption.REPLACE_EXISTING);
        Files.deleteIfExists(key);
    }

    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /**
     * What of a partial file is surely whole: the header and every part that another part follows, for the last may be cut short.
     *
     * @param bytes length up to there, 0 if not even the header is whole
     * @param parts parts up to there
     */
    private record Whole(long bytes, int parts) {

        static Whole of(Path file) throws IOException {
            Scan scan = new Scan();
            byte[] chunk = new byte[1 << 16];
            try (InputStream stream = Files.newInputStream(file)) {
                for (int read = stream.read(chunk); read >= 0; read = stream.read(chunk)) {
                    for (int i = 0; i < read; i++) {
                        scan.take(chunk[i]);
                    }
                }
            }
            return new Whole(scan.wholeBytes, scan.wholeParts);
        }
    }

    /** Walks through the bytes of a table. A line feed inside a quoted field does not end a row. */
    private static final class Scan {

        private final StringBuilder first = new StringBuilder();
        private String part = "";
        private boolean inFirst = true;
        private boolean quoted;
        private int rows;
        private int begunParts;
        private long position;
        private long rowStart;
        private long wholeBytes;
        private int wholeParts;

        void take(byte next) {
            position++;
            quoted ^= next == '"';
            if (!quoted && next == '\n') {
                endRow();
            } else if (!quoted && next == ',') {
                inFirst = false;
            } else if (inFirst) {
                first.append((char) (next & 0xff));
            }
        }

        private void endRow() {
            String name = first.toString();
            if (rows == 0) {
                wholeBytes = position;
            } else if (begunParts == 0 || !name.equals(part)) {
                if (begunParts > 0) {
                    wholeBytes = rowStart;
                    wholeParts = begunParts;
                }
                begunParts++;
                part = name;
            }
            rows++;
            rowStart = position;
            first.setLength(0);
            inFirst = true;
        }
    }
}
