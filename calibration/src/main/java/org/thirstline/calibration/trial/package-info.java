/** Plot yields beside the study's simulation of the same plots: what stand age and weather took from them. */
@NullMarked
package org.thirstline.calibration.trial;

import org.jspecify.annotations.NullMarked;
