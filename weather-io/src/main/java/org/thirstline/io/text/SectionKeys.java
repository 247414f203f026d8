package org.thirstline.io.text;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The keys of a section: what reader, schema and documentation are all made from, so that they cannot disagree.
 * Immutable and thread-safe.
 */
public final class SectionKeys {

    private final String name;
    private final List<KeySpec> keys;
    private final List<Alternative> alternatives;
    private final Map<String, KeySpec> byName = new HashMap<>();
    private final Map<String, KeySpec> bySpelling = new LinkedHashMap<>();

    private SectionKeys(Builder builder) {
        this.name = builder.name;
        this.keys = List.copyOf(builder.keys);
        this.alternatives = List.copyOf(builder.alternatives);
        for (KeySpec key : keys) {
            byName.put(key.name(), key);
            key.spellings().forEach(spelling -> bySpelling.put(spelling, key));
        }
    }

    /**
     * Keys that exclude each other.
     *
     * @param names plain keys
     * @param required whether one of them must be given
     */
    public record Alternative(List<String> names, boolean required) {}

    /** Starts the declaration of a section. */
    public static Builder of(String name) {
        return new Builder(name);
    }

    /** Returns what the section is. */
    public String name() {
        return name;
    }

    /** Returns its keys, in reading order. */
    public List<KeySpec> keys() {
        return keys;
    }

    /** Returns the groups of plain keys of which no two may be given. */
    public List<Alternative> alternatives() {
        return alternatives;
    }

    /** Returns the key that a spelling belongs to. */
    public Optional<KeySpec> find(String spelling) {
        return Optional.ofNullable(bySpelling.get(spelling));
    }

    /** Returns a declared key. */
    KeySpec declared(String plainKey) {
        KeySpec key = byName.get(plainKey);
        if (key == null) {
            throw new IllegalArgumentException("no key '" + plainKey + "' in section " + name);
        }
        return key;
    }

    /** Returns every accepted spelling. */
    public List<String> spellings() {
        return List.copyOf(bySpelling.keySet());
    }

    /** Collects the keys of a section. Confined to one declaration. */
    public static final class Builder {

        private final String name;
        private final List<KeySpec> keys = new ArrayList<>();
        private final List<Alternative> alternatives = new ArrayList<>();

        private Builder(String name) {
            this.name = name;
        }

        /** Adds a key that must be there. */
        public Builder required(String key, ValueKind kind, String example, String meaning) {
            keys.add(new KeySpec(key, kind, true, meaning, example));
            return this;
        }

        /** Adds a key that may be there. */
        public Builder optional(String key, ValueKind kind, String example, String meaning) {
            keys.add(new KeySpec(key, kind, false, meaning, example));
            return this;
        }

        /** Says that exactly one of these must be given. */
        public Builder exactlyOneOf(String... names) {
            alternatives.add(new Alternative(List.of(names), true));
            return this;
        }

        /** Says that at most one of these may be given. */
        public Builder atMostOneOf(String... names) {
            alternatives.add(new Alternative(List.of(names), false));
            return this;
        }

        /** Returns the section. */
        public SectionKeys build() {
            return new SectionKeys(this);
        }
    }
}
