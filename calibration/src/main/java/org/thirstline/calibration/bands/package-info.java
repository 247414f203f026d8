/** What the doubt in a crop file's fitted parameters does to the yields of a study. */
@NullMarked
package org.thirstline.calibration.bands;

import org.jspecify.annotations.NullMarked;
