/** From weather as found to weather without gaps: range checks, gap filling, and the report of both. */
@NullMarked
package org.thirstline.io.quality;

import org.jspecify.annotations.NullMarked;
