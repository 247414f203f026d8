/** The day loop and the paired runs that use it. */
@NullMarked
package org.thirstline.model.engine;

import org.jspecify.annotations.NullMarked;
