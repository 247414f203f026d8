/** How much yield is lost to a shortage of rain, and how surely. */
@NullMarked
package org.thirstline.calibration.response;

import org.jspecify.annotations.NullMarked;
