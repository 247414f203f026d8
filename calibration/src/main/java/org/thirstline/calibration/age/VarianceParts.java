package org.thirstline.calibration.age;

/**
 * Where the scatter of log yield comes from, as standard deviations of log yield (0.1 is about 10 %). Immutable and thread-safe.
 *
 * @param plotSd between plots of a planting
 * @param yearSd between years, common to all plots; where one plot only is seen each year this is inside the residual
 * @param siteYearSd between sites within a year; zero with one site
 * @param residualSd what is left
 */
public record VarianceParts(double plotSd, double yearSd, double siteYearSd, double residualSd) {}
