/** Daily weather files: one reader per format, recognised by content; units are converted there and nowhere else. */
@NullMarked
package org.thirstline.io.weather;

import org.jspecify.annotations.NullMarked;
