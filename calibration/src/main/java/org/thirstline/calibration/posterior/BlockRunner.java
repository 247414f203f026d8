package org.thirstline.calibration.posterior;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/** Runs all chains through one block, each on the next free thread. To be closed. */
final class BlockRunner implements AutoCloseable {

    private final List<Chain> chains;
    private final int threads;
    private final @Nullable ExecutorService pool;

    BlockRunner(List<Chain> chains, int threads) {
        this.chains = chains;
        this.threads = threads;
        pool = threads == 1 ? null : Executors.newFixedThreadPool(threads - 1, BlockRunner::daemon);
    }

    private static Thread daemon(Runnable task) {
        Thread thread = new Thread(task, "posterior-sampler");
        thread.setDaemon(true);
        return thread;
    }

    /** Returns when every chain is through; what a likelihood throws is thrown here. */
    void run(Archive archive, @Nullable StandIn standIn, long block) {
        List<Future<?>> others = new ArrayList<>();
        AtomicInteger next = new AtomicInteger();
        if (pool != null) {
            for (int thread = 1; thread < threads; thread++) {
                others.add(pool.submit((Callable<Void>) () -> runShare(archive, standIn, block, next)));
            }
        }
        runShare(archive, standIn, block, next);
        others.forEach(BlockRunner::await);
    }

    private @Nullable Void runShare(Archive archive, @Nullable StandIn standIn, long block, AtomicInteger next) {
        for (int chain = next.getAndIncrement(); chain < chains.size(); chain = next.getAndIncrement()) {
            chains.get(chain).runBlock(archive, standIn, block);
        }
        return null;
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
            throw new IllegalStateException("sampling was interrupted", interrupted);
        }
    }

    @Override
    public void close() {
        if (pool != null) {
            pool.shutdownNow();
        }
    }
}
