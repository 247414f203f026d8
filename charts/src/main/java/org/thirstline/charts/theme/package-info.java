/** The visual system: sizes, type, colours, the bundled font. */
@NullMarked
package org.thirstline.charts.theme;

import org.jspecify.annotations.NullMarked;
