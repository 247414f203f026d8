/** Which inputs of a model matter over the whole of their ranges, independent of what the model is. */
@NullMarked
package org.thirstline.calibration.sensitivity;

import org.jspecify.annotations.NullMarked;
