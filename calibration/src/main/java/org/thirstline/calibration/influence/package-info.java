/** Which parameters of crop and soil matter for a study: what is varied, what is asked, and the answers. */
@NullMarked
package org.thirstline.calibration.influence;

import org.jspecify.annotations.NullMarked;
