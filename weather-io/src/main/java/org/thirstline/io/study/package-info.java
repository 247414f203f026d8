/** The study file: site, weather, soil, stand and management of one simulation. */
@NullMarked
package org.thirstline.io.study;

import org.jspecify.annotations.NullMarked;
