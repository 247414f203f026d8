package org.thirstline.model.result;

/**
 * Where the potential of one growth year went [Mg/ha]. The first entry is what a mature stand with unlimited water and no frost would have had standing at
 * its peak; each loss is the difference between two runs that differ in one thing, in this order, so that
 * potential - age - drought - excess water - frost - winter - left on the field = harvested, exactly. A loss can be negative where the
 * thing helped.
 *
 * @param growthYear the growth year
 * @param potentialMgHa peak of the mature stand without lack or excess of water and without frost
 * @param ageMgHa lost because the stand was young or ageing
 * @param droughtMgHa lost to lack of water
 * @param excessWaterMgHa lost to poor aeration
 * @param frostMgHa lost to spring frost, winter kill and early autumn frost
 * @param winterMgHa lost between the peak and the cut
 * @param leftOnFieldMgHa stubble and what the machine did not pick up
 * @param harvestedMgHa harvested
 */
public record YieldLedger(
        int growthYear,
        double potentialMgHa,
        double ageMgHa,
        double droughtMgHa,
        double excessWaterMgHa,
        double frostMgHa,
        double winterMgHa,
        double leftOnFieldMgHa,
        double harvestedMgHa) {}
