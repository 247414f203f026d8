/** One recipe per chart, and the canvas, axes and labels they share. */
@NullMarked
package org.thirstline.charts;

import org.jspecify.annotations.NullMarked;
