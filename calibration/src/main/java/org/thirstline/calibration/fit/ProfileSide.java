package org.thirstline.calibration.fit;

import java.util.ArrayList;
import java.util.List;

/** A walk away from the best value of one parameter to one side. Confined to one thread. */
final class ProfileSide {

    /** Steps aim at this share of the limit. */
    private static final double STEP_SHARE = 0.2;

    private static final double LARGEST_GROWTH = 3.0;
    private static final double SMALLEST_GROWTH = 0.1;

    /** First step where linear theory gives no standard error, in typical sizes of the parameter. */
    private static final double BLIND_STEP = 0.1;

    /** The end of the interval is found to this share of the limit, or as far as the searches' own tolerance lets it. */
    private static final double END_TOLERANCE = 1.0e-4;

    private static final double TOLERANCES_AT_END = 10.0;

    private static final int MOST_REFINEMENTS = 12;

    private final ProfileLikelihood profile;
    private final FitParameter parameter;
    private final List<FitParameter> others;
    private final int index;
    private final int sign;
    private final double bound;
    private double[] otherValues;
    /** How the others move with the parameter, to start each search where it will probably end. */
    private final double[] otherSlopes;

    private double lastValue;
    private double end;
    private boolean open = true;

    ProfileSide(ProfileLikelihood profile, int index, int sign) {
        this.profile = profile;
        this.index = index;
        this.sign = sign;
        FitResult fit = profile.fit();
        parameter = fit.parameters().get(index);
        others = new ArrayList<>(fit.parameters());
        others.remove(index);
        bound = sign > 0 ? parameter.upper() : parameter.lower();
        otherValues = without(fit.values(), index);
        otherSlopes = without(slopes(fit, index), index);
        lastValue = fit.value(index);
        end = fit.value(index);
    }

    /** Slopes along the valley by linear theory; level where it says nothing. */
    private static double[] slopes(FitResult fit, int index) {
        double[] slopes = new double[fit.parameters().size()];
        for (int i = 0; i < slopes.length; i++) {
            double slope = fit.covariance(i, index) / fit.covariance(index, index);
            slopes[i] = Double.isFinite(slope) ? slope : 0.0;
        }
        return slopes;
    }

    private static double[] without(double[] values, int index) {
        double[] rest = new double[values.length - 1];
        System.arraycopy(values, 0, rest, 0, index);
        System.arraycopy(values, index + 1, rest, index, rest.length - index);
        return rest;
    }

    /** Walks until the limit is passed, the bound is reached or the points are spent; returns the points. */
    List<ProfilePoint> walk() {
        List<ProfilePoint> points = new ArrayList<>();
        double limit = profile.limit();
        double error = profile.fit().standardError(index);
        double step =
                Double.isFinite(error) && error > 0.0 ? STEP_SHARE * limit * error : BLIND_STEP * parameter.scale();
        ProfilePoint last = new ProfilePoint(end, profile.fit().residualSumOfSquares(), 0.0);
        while (open && points.size() < profile.pointsPerSide() && last.value() != bound) {
            double next = parameter.clamp(last.value() + sign * step);
            ProfilePoint point = at(next);
            points.add(point);
            if (Math.abs(point.signedRoot()) >= limit) {
                open = false;
                end = refine(last, point, points);
            } else {
                end = next;
                double rise = Math.abs(point.signedRoot()) - Math.abs(last.signedRoot());
                double growth = rise > 0.0 ? STEP_SHARE * limit / rise : LARGEST_GROWTH;
                step *= Math.max(SMALLEST_GROWTH, Math.min(LARGEST_GROWTH, growth));
                last = point;
            }
        }
        return points;
    }

    /** Closes in on the limit between a point within and one beyond, by false position and halving in turn. */
    private double refine(ProfilePoint within, ProfilePoint beyond, List<ProfilePoint> points) {
        ProfilePoint inner = within;
        ProfilePoint outer = beyond;
        double limit = profile.limit();
        double tolerance =
                Math.max(END_TOLERANCE, TOLERANCES_AT_END * profile.search().tolerance());
        for (int i = 0; i < MOST_REFINEMENTS; i++) {
            double innerGap = limit - Math.abs(inner.signedRoot());
            double width = Math.abs(outer.signedRoot()) - Math.abs(inner.signedRoot());
            double share = i % 3 == 2 || !Double.isFinite(width) ? 0.5 : innerGap / width;
            ProfilePoint middle = at(inner.value() + share * (outer.value() - inner.value()));
            points.add(middle);
            if (Math.abs(Math.abs(middle.signedRoot()) - limit) <= tolerance * limit) {
                return middle.value();
            }
            if (Math.abs(middle.signedRoot()) < limit) {
                inner = middle;
            } else {
                outer = middle;
            }
        }
        return inner.value();
    }

    private ProfilePoint at(double value) {
        double sum = others.isEmpty() ? sumOfSquares(model(value).residuals(otherValues)) : refit(value);
        return new ProfilePoint(value, sum, sign * profile.root(sum));
    }

    private static double sumOfSquares(double[] residuals) {
        return NumericJacobian.isFinite(residuals) ? BoundedSearch.sumOfSquares(residuals) : Double.POSITIVE_INFINITY;
    }

    /** Fits the other parameters from where they were; an infinite sum where the model serves no point on the way. */
    private double refit(double value) {
        List<FitParameter> started = new ArrayList<>();
        double[] start = new double[otherValues.length];
        for (int i = 0; i < others.size(); i++) {
            FitParameter other = others.get(i);
            start[i] = other.clamp(otherValues[i] + otherSlopes[i] * (value - lastValue));
            started.add(new FitParameter(other.name(), start[i], other.lower(), other.upper(), other.scale()));
        }
        SearchResult result = new BoundedSearch(model(value), started, profile.search(), start).run();
        if (Double.isFinite(result.residualSumOfSquares())) {
            follow(value, result.end());
        }
        return result.residualSumOfSquares();
    }

    /** Moves on, and takes the slopes from the last two points. */
    private void follow(double value, double[] ends) {
        double step = value - lastValue;
        for (int i = 0; i < ends.length && step != 0.0; i++) {
            otherSlopes[i] = (ends[i] - otherValues[i]) / step;
        }
        otherValues = ends;
        lastValue = value;
    }

    private ResidualModel model(double value) {
        return rest -> {
            double[] all = new double[rest.length + 1];
            System.arraycopy(rest, 0, all, 0, index);
            all[index] = value;
            System.arraycopy(rest, index, all, index + 1, rest.length - index);
            return profile.model().residuals(all);
        };
    }

    /** Returns where the limit is passed, or the last value tried. */
    double end() {
        return end;
    }

    /** Returns whether the limit was never passed. */
    boolean isOpen() {
        return open;
    }
}
