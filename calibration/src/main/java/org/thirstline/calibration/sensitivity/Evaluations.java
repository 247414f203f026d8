package org.thirstline.calibration.sensitivity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.Check;
import org.thirstline.model.error.InputException;

/** Runs a model at many points of the unit cube, shared among threads; results come in the order of the points. */
final class Evaluations {

    private static final int CHUNK = 16;

    private final OutputModel model;
    private final List<SensitivityInput> inputs;
    private final ProgressListener listener;
    private final AtomicInteger next = new AtomicInteger();
    private int done;

    private Evaluations(OutputModel model, List<SensitivityInput> inputs, ProgressListener listener) {
        this.model = model;
        this.inputs = inputs;
        this.listener = listener;
    }

    /**
     * Returns outputs by point.
     *
     * @param unitPoints points of the unit cube; not modified
     */
    static double[][] run(
            OutputModel model,
            List<SensitivityInput> inputs,
            double[][] unitPoints,
            int threads,
            ProgressListener listener) {
        Check.range("number of threads", threads, "", 1.0, 10_000.0);
        double[][] outputs = new double[unitPoints.length][];
        Evaluations evaluations = new Evaluations(model, inputs, listener);
        ExecutorService pool = Executors.newFixedThreadPool(threads, Evaluations::daemon);
        try {
            List<Future<?>> shares = new ArrayList<>();
            for (int thread = 0; thread < threads; thread++) {
                shares.add(pool.submit(() -> evaluations.runChunks(unitPoints, outputs)));
            }
            shares.forEach(Evaluations::await);
        } finally {
            pool.shutdownNow();
        }
        return outputs;
    }

    private static Thread daemon(Runnable task) {
        Thread thread = new Thread(task, "sensitivity");
        thread.setDaemon(true);
        return thread;
    }

    private void runChunks(double[][] unitPoints, double[][] outputs) {
        int start = next.getAndAdd(CHUNK);
        while (start < unitPoints.length) {
            int end = Math.min(start + CHUNK, unitPoints.length);
            for (int i = start; i < end; i++) {
                outputs[i] = outputsAt(unitPoints[i]);
            }
            advanced(end - start, unitPoints.length);
            start = next.getAndAdd(CHUNK);
        }
    }

    private synchronized void advanced(int count, int total) {
        done += count;
        listener.advanced(done, total);
    }

    private double[] outputsAt(double[] unitPoint) {
        double[] point = new double[unitPoint.length];
        for (int i = 0; i < point.length; i++) {
            point[i] = inputs.get(i).quantile().applyAsDouble(unitPoint[i]);
        }
        double[] outputs = model.outputs(point);
        for (int i = 0; i < outputs.length; i++) {
            if (!Double.isFinite(outputs[i])) {
                throw new InputException(CalibrationError.OUTPUT_NOT_FINITE, i + 1, outputs[i], Arrays.toString(point));
            }
        }
        return outputs;
    }

    private static void await(Future<?> share) {
        try {
            share.get();
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw new IllegalStateException(failed.getCause());
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the sensitivity analysis was interrupted", interrupted);
        }
    }
}
