/** Processes of the plant: phenology, frost, stand, canopy, growth, reserve, winter losses, dry-down, harvest. */
@NullMarked
package org.thirstline.model.crop;

import org.jspecify.annotations.NullMarked;
