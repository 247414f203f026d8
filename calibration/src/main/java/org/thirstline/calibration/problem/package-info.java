/** What a calibration compares: parameters to change, stands to simulate, measured values, and how far off they may be. */
@NullMarked
package org.thirstline.calibration.problem;

import org.jspecify.annotations.NullMarked;
