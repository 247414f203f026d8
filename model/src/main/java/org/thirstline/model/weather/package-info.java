/** The daily weather of a place, and what follows from it alone. */
@NullMarked
package org.thirstline.model.weather;

import org.jspecify.annotations.NullMarked;
