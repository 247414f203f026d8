/** Files that charts are written to. */
@NullMarked
package org.thirstline.charts.output;

import org.jspecify.annotations.NullMarked;
