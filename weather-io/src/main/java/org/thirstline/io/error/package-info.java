/** Refusals of files and settings that cannot be used, with codes that tests and callers can rely on. */
@NullMarked
package org.thirstline.io.error;

import org.jspecify.annotations.NullMarked;
