/** Whether a stand fell with age or with the weather, how surely, and what would settle it. */
@NullMarked
package org.thirstline.calibration.age;

import org.jspecify.annotations.NullMarked;
