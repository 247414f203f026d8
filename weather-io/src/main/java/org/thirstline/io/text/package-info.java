/** Structured text that people write: values with units, and errors that say where and what. */
@NullMarked
package org.thirstline.io.text;

import org.jspecify.annotations.NullMarked;
