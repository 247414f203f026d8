package org.thirstline.io.study;

/**
 * What was assumed where the study says nothing. Immutable and thread-safe.
 *
 * @param key the key that would have said it
 * @param text what was taken, and on what grounds
 */
public record Assumption(String key, String text) {}
