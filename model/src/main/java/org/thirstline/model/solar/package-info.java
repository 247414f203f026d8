/** Where the sun stands: extraterrestrial radiation and day length. */
@NullMarked
package org.thirstline.model.solar;

import org.jspecify.annotations.NullMarked;
