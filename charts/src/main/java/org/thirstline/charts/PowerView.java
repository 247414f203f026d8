package org.thirstline.charts;

import java.util.List;
import java.util.OptionalDouble;
import org.thirstline.calibration.trial.PowerCurve;

/**
 * What a trial and larger ones can find. Immutable and thread-safe.
 *
 * @param onsetAge last age before the declines tried
 * @param smallestFound smallest decline found in four trials of five [fraction per year]; empty if none is
 * @param scatterAssumed whether the scatter is assumed, not found
 * @param curves the trial as it is first
 */
public record PowerView(int onsetAge, OptionalDouble smallestFound, boolean scatterAssumed, List<PowerCurve> curves) {

    /** Copies the list. */
    public PowerView {
        curves = List.copyOf(curves);
    }
}
