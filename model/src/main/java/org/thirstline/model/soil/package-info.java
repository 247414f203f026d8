/** Processes of the soil: snow, runoff, storage, drainage, evaporation, uptake, aeration. */
@NullMarked
package org.thirstline.model.soil;

import org.jspecify.annotations.NullMarked;
