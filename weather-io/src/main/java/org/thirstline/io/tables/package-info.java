/** Result files: the same inputs give the same bytes, and files appear whole or not at all. */
@NullMarked
package org.thirstline.io.tables;

import org.jspecify.annotations.NullMarked;
