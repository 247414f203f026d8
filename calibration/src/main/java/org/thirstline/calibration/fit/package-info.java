/** Least-squares fitting of bounded parameters, independent of what is fitted. */
@NullMarked
package org.thirstline.calibration.fit;

import org.jspecify.annotations.NullMarked;
