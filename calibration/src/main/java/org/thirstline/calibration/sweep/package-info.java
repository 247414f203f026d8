/** Many cells, each with its weather, soil and planting, simulated in the order of their table. */
@NullMarked
package org.thirstline.calibration.sweep;

import org.jspecify.annotations.NullMarked;
