package org.thirstline.io.text;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** One value of a document with the line it stands on. Immutable and thread-safe. */
public sealed interface Node permits Node.Scalar, Node.Sequence, Node.Mapping {

    /** Returns the line, the first is 1. */
    int line();

    /** Returns the kind in words, for messages. */
    String kind();

    /** What a scalar looks like before anyone gives it a meaning. */
    enum ScalarKind {
        /** Text, quoted or not. */
        TEXT,
        /** A number without anything behind it. */
        NUMBER,
        /** True or false. */
        FLAG,
        /** Nothing behind the key. */
        NOTHING
    }

    /**
     * A single value.
     *
     * @param line its line
     * @param text as written
     * @param scalarKind what it looks like
     */
    record Scalar(int line, String text, ScalarKind scalarKind) implements Node {
        @Override
        public String kind() {
            return scalarKind == ScalarKind.NOTHING ? "nothing" : "'" + text + "'";
        }
    }

    /**
     * A list.
     *
     * @param line line of its first sign
     * @param items its items
     */
    record Sequence(int line, List<Node> items) implements Node {
        /** Copies the items. */
        public Sequence {
            items = List.copyOf(items);
        }

        @Override
        public String kind() {
            return "a list";
        }
    }

    /**
     * A section of keys and values.
     *
     * @param line line of its first key
     * @param entries its entries by key, in order
     */
    record Mapping(int line, Map<String, Entry> entries) implements Node {
        /** Keeps the order of the entries. */
        public Mapping {
            entries = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(entries));
        }

        @Override
        public String kind() {
            return "a section of keys";
        }
    }

    /**
     * A key's line and value.
     *
     * @param line line of the key
     * @param value its value
     */
    record Entry(int line, Node value) {}
}
