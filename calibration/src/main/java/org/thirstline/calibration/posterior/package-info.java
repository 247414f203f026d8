/** Posterior distributions by Markov chains: priors, sampler, convergence and summaries, independent of what is calibrated. */
@NullMarked
package org.thirstline.calibration.posterior;

import org.jspecify.annotations.NullMarked;
