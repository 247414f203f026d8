/** Plot data as people have them: one line for each value, or one column for each year. */
@NullMarked
package org.thirstline.io.plots;

import org.jspecify.annotations.NullMarked;
