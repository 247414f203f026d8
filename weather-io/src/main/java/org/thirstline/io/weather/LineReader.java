package org.thirstline.io.weather;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/**
 * Reads a text file line by line, however large: gzip or not, with or without byte order mark, any line ends, UTF-8 or else Latin-1.
 * The first lines can be looked at before they are read. Confined to one read.
 */
public final class LineReader implements Closeable {

    private static final int LONGEST_LINE = 1 << 20;

    private final String name;
    private final @Nullable DigestInputStream raw;
    private final InputStream text;
    private final ArrayDeque<String> ahead = new ArrayDeque<>();
    private final byte[] chunk = new byte[1 << 16];
    private int position;
    private int limit;
    private byte[] buffer = new byte[512];
    private int lineNumber;
    private boolean started;
    private boolean ended;

    /** Opens a file. */
    public LineReader(Path path) {
        this.name = path.toString();
        if (Files.isDirectory(path)) {
            throw new InputException(InputError.FILE_UNREADABLE, "it is a folder; name the files in it").at(name);
        }
        try {
            raw = new DigestInputStream(Files.newInputStream(path), MessageDigest.getInstance("SHA-256"));
            BufferedInputStream buffered = new BufferedInputStream(raw, 1 << 16);
            text = isGzip(buffered) ? new GZIPInputStream(buffered, 1 << 16) : buffered;
        } catch (NoSuchFileException e) {
            throw new InputException(InputError.FILE_NOT_FOUND, path);
        } catch (IOException e) {
            throw unreadable(e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Reads an entry of an archive, which stays open. */
    LineReader(String name, InputStream entry) {
        this.name = name;
        this.raw = null;
        this.text = entry;
    }

    private static boolean isGzip(InputStream in) throws IOException {
        in.mark(2);
        int first = in.read();
        int second = in.read();
        in.reset();
        return first == 0x1f && second == 0x8b;
    }

    private InputException unreadable(IOException cause) {
        String reason = cause.getMessage() == null ? cause.getClass().getSimpleName() : cause.getMessage();
        return new InputException(InputError.FILE_UNREADABLE, reason).at(name);
    }

    /** Returns whether a JSON document starts here. */
    boolean isJson() {
        try {
            int first = nextByte();
            position -= first >= 0 ? 1 : 0;
            int at = limit >= 3 && chunk[0] == (byte) 0xef ? 3 : 0;
            while (at < limit && (chunk[at] == ' ' || chunk[at] == '\n' || chunk[at] == '\r' || chunk[at] == '\t')) {
                at++;
            }
            return at < limit && (chunk[at] == '{' || chunk[at] == '[');
        } catch (IOException e) {
            throw unreadable(e);
        }
    }

    /** Returns all bytes that have not been read. */
    InputStream rest() {
        return new SequenceInputStream(new ByteArrayInputStream(chunk, position, limit - position), new KeptOpen(text));
    }

    /** Returns up to so many lines from the start, which stay to be read. */
    public List<String> head(int lines) {
        while (ahead.size() < lines) {
            String line = readLine();
            if (line == null) {
                break;
            }
            ahead.add(line);
        }
        return ahead.stream().limit(lines).toList();
    }

    /** Returns the next line, or null at the end. */
    @Nullable
    String next() {
        String line = ahead.isEmpty() ? readLine() : ahead.poll();
        ended = line == null;
        lineNumber += ended ? 0 : 1;
        return line;
    }

    /** Returns the next line that is not blank, or null at the end. */
    @Nullable
    public String nextFilled() {
        String line = next();
        while (line != null && line.isBlank()) {
            line = next();
        }
        return line;
    }

    /** Returns the number of the line read last. */
    public int lineNumber() {
        return lineNumber;
    }

    /** Returns where the reader stands, for messages: file and line, or the file alone at its end. */
    public String place() {
        return ended || lineNumber == 0 ? name : name + ":" + lineNumber;
    }

    /** Returns whether this is a file of its own, not one in an archive. */
    boolean isWholeFile() {
        return raw != null;
    }

    /** Reads what is left and returns the SHA-256 of the file as it lies on disk. */
    String sha256() {
        if (raw == null) {
            throw new IllegalStateException(name);
        }
        try {
            byte[] sink = new byte[1 << 16];
            while (raw.read(sink) >= 0) {
                // only the digest matters
            }
        } catch (IOException e) {
            throw unreadable(e);
        }
        return HexFormat.of().formatHex(raw.getMessageDigest().digest());
    }

    private @Nullable String readLine() {
        try {
            return readLineOrFail();
        } catch (IOException e) {
            throw unreadable(e);
        }
    }

    private @Nullable String readLineOrFail() throws IOException {
        int length = 0;
        int bits = 0;
        int b = nextByte();
        if (b < 0) {
            return null;
        }
        while (b >= 0 && b != '\n' && b != '\r') {
            if (b == 0 || length == LONGEST_LINE) {
                throw notText();
            }
            if (length == buffer.length) {
                buffer = Arrays.copyOf(buffer, 2 * length);
            }
            buffer[length++] = (byte) b;
            bits |= b;
            b = nextByte();
        }
        if (b == '\r' && nextByte() != '\n') {
            position = Math.max(0, position - 1);
        }
        return decode(length, bits >= 0x80);
    }

    private int nextByte() throws IOException {
        if (position == limit) {
            limit = Math.max(0, text.read(chunk, 0, chunk.length));
            position = 0;
            if (limit == 0) {
                return -1;
            }
        }
        return chunk[position++] & 0xff;
    }

    private String decode(int length, boolean beyondAscii) {
        int from = started || !beyondAscii ? 0 : byteOrderMark(length);
        started = true;
        if (!beyondAscii) {
            return new String(buffer, 0, length, StandardCharsets.ISO_8859_1);
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(buffer, from, length - from))
                    .toString();
        } catch (CharacterCodingException e) {
            return new String(buffer, from, length - from, StandardCharsets.ISO_8859_1);
        }
    }

    private int byteOrderMark(int length) {
        boolean utf8 = length >= 3 && buffer[0] == (byte) 0xef && buffer[1] == (byte) 0xbb && buffer[2] == (byte) 0xbf;
        return utf8 ? 3 : 0;
    }

    private InputException notText() {
        return new InputException(
                        InputError.FILE_NOT_TEXT,
                        "binary, UTF-16 or one endless line",
                        "save it as plain text in UTF-8")
                .at(name);
    }

    @Override
    public void close() {
        try {
            text.close();
        } catch (IOException e) {
            throw unreadable(e);
        }
    }
}
