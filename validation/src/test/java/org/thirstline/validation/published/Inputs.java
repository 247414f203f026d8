package org.thirstline.validation.published;

import java.util.Map;
import java.util.TreeMap;

/** Named inputs of a published case, written as {@code name=value} pairs. */
final class Inputs {

    private final Map<String, String> values = new TreeMap<>();

    Inputs(String text) {
        for (String pair : text.isBlank() ? new String[0] : text.trim().split("\\s+")) {
            int equals = pair.indexOf('=');
            values.put(pair.substring(0, equals), pair.substring(equals + 1));
        }
    }

    boolean has(String name) {
        return values.containsKey(name);
    }

    String text(String name) {
        String value = values.get(name);
        if (value == null) {
            throw new IllegalArgumentException("the case gives no " + name + ", only " + values.keySet());
        }
        return value;
    }

    double get(String name) {
        return Double.parseDouble(text(name));
    }

    int whole(String name) {
        return Integer.parseInt(text(name));
    }

    @Override
    public String toString() {
        return values.toString();
    }
}
