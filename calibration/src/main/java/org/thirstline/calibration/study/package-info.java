/** A whole study simulated: its weather read, every zone run, every year compared with what is normal. */
@NullMarked
package org.thirstline.calibration.study;

import org.jspecify.annotations.NullMarked;
