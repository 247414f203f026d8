package org.thirstline.calibration.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;

/** Many tasks, some at once; their results come in the order of the tasks. Stateless and thread-safe. */
public final class Parallel {

    private Parallel() {}

    /**
     * Applies a function to each item.
     *
     * @param items what to work on
     * @param threads at most so many at once
     * @param function what to do; thread-safe if there are several threads
     * @return results in the order of the items
     */
    public static <T, R> List<R> map(List<T> items, int threads, Function<T, R> function) {
        List<R> results = new ArrayList<>();
        if (threads <= 1 || items.size() <= 1) {
            items.forEach(item -> results.add(function.apply(item)));
            return results;
        }
        ExecutorService pool = Executors.newFixedThreadPool(Math.min(threads, items.size()), Parallel::daemon);
        try {
            List<Future<R>> futures = new ArrayList<>();
            items.forEach(item -> futures.add(pool.submit(() -> function.apply(item))));
            futures.forEach(future -> results.add(get(future)));
            return results;
        } finally {
            pool.shutdownNow();
        }
    }

    private static Thread daemon(Runnable task) {
        Thread thread = new Thread(task, "calibration");
        thread.setDaemon(true);
        return thread;
    }

    private static <R> R get(Future<R> future) {
        try {
            return future.get();
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw new IllegalStateException(failed.getCause());
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the calibration was interrupted", interrupted);
        }
    }
}
