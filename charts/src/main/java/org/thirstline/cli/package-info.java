/** The command line: one class a command. */
@NullMarked
package org.thirstline.cli;

import org.jspecify.annotations.NullMarked;
