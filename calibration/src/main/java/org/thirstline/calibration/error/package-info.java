/** Refusals of calibration input that cannot be used. */
@NullMarked
package org.thirstline.calibration.error;

import org.jspecify.annotations.NullMarked;
