/** How well simulations agree with what was observed, above all on data that were held out. */
@NullMarked
package org.thirstline.calibration.skill;

import org.jspecify.annotations.NullMarked;
