/** Crop files: every parameter with its range, source and status. */
@NullMarked
package org.thirstline.io.crop;

import org.jspecify.annotations.NullMarked;
