/** What rain was normal and how far a season fell short of it. */
@NullMarked
package org.thirstline.model.climate;

import org.jspecify.annotations.NullMarked;
