/** The report: one HTML file that opens without a network. */
@NullMarked
package org.thirstline.charts.report;

import org.jspecify.annotations.NullMarked;
