package org.thirstline.calibration.posterior;

/**
 * Where a chain stands after a block, and what it has done since the very start. Immutable and thread-safe.
 *
 * @param point the state itself; not to be modified
 * @param logDensity of the posterior there
 * @param accepted proposals accepted
 * @param evaluations how often the likelihood was asked
 */
record ChainState(double[] point, double logDensity, long accepted, long evaluations) {}
