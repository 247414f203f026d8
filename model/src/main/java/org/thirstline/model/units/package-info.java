/** Named conversions between the units inside the engine and those people read. */
@NullMarked
package org.thirstline.model.units;

import org.jspecify.annotations.NullMarked;
