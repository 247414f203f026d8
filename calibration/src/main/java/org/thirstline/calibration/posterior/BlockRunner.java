package org.thirstline.calibration.posterior;

import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * Runs chains through blocks of generations, each on the next free thread. A chain may be one block ahead of the others, so that none has to wait
 * for the slowest. What a block may see of the past is told when it is opened. Its methods are for one thread, which works along while it
 * waits. To be closed.
 */
final class BlockRunner implements AutoCloseable {

    private final BlockQueue queue;
    private final @Nullable ExecutorService pool;

    /**
     * Starts the threads.
     *
     * @param chains as they stand after a block
     * @param block that block
     * @param last block to run
     * @param threads at most so many are used
     */
    BlockRunner(List<Chain> chains, long block, long last, int threads) {
        queue = new BlockQueue(chains, block, last);
        int others = Math.min(threads, chains.size()) - 1;
        pool = others == 0 ? null : Executors.newFixedThreadPool(others, BlockRunner::daemon);
        for (int i = 0; i < others && pool != null; i++) {
            pool.execute(queue::workUntilClosed);
        }
    }

    private static Thread daemon(Runnable task) {
        Thread thread = new Thread(task, "posterior-sampler");
        thread.setDaemon(true);
        return thread;
    }

    /** Lets chains run the next block, if there is one, with the past that belongs to it. */
    void open(Archive past, @Nullable StandIn standIn) {
        queue.open(new BlockQueue.Past(past, standIn));
    }

    /** Returns where every chain stands after an opened block, when all are through; what a likelihood throws is thrown here. */
    List<ChainState> finish(long block) {
        queue.workUntilThrough(block);
        return queue.statesAfter(block);
    }

    /** Waits until the other threads have done what they are at. */
    @Override
    public void close() {
        queue.close();
        if (pool == null) {
            return;
        }
        pool.shutdown();
        try {
            pool.awaitTermination(Long.MAX_VALUE, TimeUnit.NANOSECONDS);
        } catch (InterruptedException interrupted) {
            pool.shutdownNow();
            Thread.currentThread().interrupt();
        }
    }
}
