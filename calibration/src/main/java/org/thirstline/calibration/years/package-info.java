/** What the years of a simulated study say: rain that was missing, what it cost, on which soil, and what could be done about it. */
@NullMarked
package org.thirstline.calibration.years;

import org.jspecify.annotations.NullMarked;
