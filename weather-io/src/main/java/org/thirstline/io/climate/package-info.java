/** Climate at a glance: normals, growing season, frost dates and the precipitation index of a weather record. */
@NullMarked
package org.thirstline.io.climate;

import org.jspecify.annotations.NullMarked;
