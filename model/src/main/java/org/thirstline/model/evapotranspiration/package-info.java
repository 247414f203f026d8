/** Humidity, net radiation and reference evapotranspiration after FAO-56 and ASCE-EWRI 2005. */
@NullMarked
package org.thirstline.model.evapotranspiration;

import org.jspecify.annotations.NullMarked;
