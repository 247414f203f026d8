/** Calibration from plot data to the result: fit, what the data can tell, posterior, skill on what was held out. */
@NullMarked
package org.thirstline.calibration.calibrate;

import org.jspecify.annotations.NullMarked;
