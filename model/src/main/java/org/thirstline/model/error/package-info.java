/** Refusals of impossible input, with codes that tests and callers can rely on. */
@NullMarked
package org.thirstline.model.error;

import org.jspecify.annotations.NullMarked;
