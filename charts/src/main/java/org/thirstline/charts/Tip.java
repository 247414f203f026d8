package org.thirstline.charts;

import java.awt.geom.Rectangle2D;

/**
 * What a pointer over a part of a picture reads. Immutable and thread-safe.
 *
 * @param area the part [px]
 * @param text what stands there, with units
 */
public record Tip(Rectangle2D area, String text) {}
