/** Slides for a talk: charts under their findings, with text alternatives and speaker notes. */
@NullMarked
package org.thirstline.charts.slides;

import org.jspecify.annotations.NullMarked;
