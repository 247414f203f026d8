package org.thirstline.io.weather;

import java.io.FilterInputStream;
import java.io.InputStream;

/** A part of a file, whose reader must not close the whole. */
final class KeptOpen extends FilterInputStream {

    KeptOpen(InputStream in) {
        super(in);
    }

    @Override
    public void close() {
        // the whole is closed by its owner
    }
}
