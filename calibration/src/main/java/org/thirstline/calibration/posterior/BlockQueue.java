package org.thirstline.calibration.posterior;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Which chain runs which block next: the one that is furthest behind, of those that no thread has and whose next block is open. At most two blocks
 * are open at a time. Thread-safe.
 */
final class BlockQueue {

    private static final int OPEN_BLOCKS = 2;

    private final List<Chain> chains;
    private final long[] done;
    private final boolean[] taken;
    private final ChainState[][] states;
    private final @Nullable Past[] pasts = new Past[OPEN_BLOCKS];
    private final long last;
    private long open;
    private boolean closed;
    private @Nullable Throwable failure;

    /**
     * What a block may see.
     *
     * @param archive past states
     * @param standIn fitted to them, if one is good enough
     */
    record Past(Archive archive, @Nullable StandIn standIn) {}

    private record Turn(int chain, long block, Past past) {}

    BlockQueue(List<Chain> chains, long block, long last) {
        this.chains = chains;
        this.last = last;
        done = new long[chains.size()];
        Arrays.fill(done, block);
        open = block;
        taken = new boolean[chains.size()];
        states = new ChainState[OPEN_BLOCKS][chains.size()];
    }

    /** Opens the block after those that are open, unless that is one too many; the block two before it must be through. */
    synchronized void open(Past past) {
        if (open >= last) {
            return;
        }
        open++;
        pasts[slot(open)] = past;
        notifyAll();
    }

    /** Ends {@link #workUntilClosed} for every thread once it has done what it is at. */
    synchronized void close() {
        closed = true;
        notifyAll();
    }

    /** Returns where every chain stood after a block that all are through, until the block two after it is opened. */
    synchronized List<ChainState> statesAfter(long block) {
        return List.of(states[slot(block)]);
    }

    /** Runs whatever is open, waiting for more, until the queue is closed or a chain has failed. */
    void workUntilClosed() {
        work(Long.MAX_VALUE);
    }

    /** Runs whatever is open until all chains are through a block. */
    void workUntilThrough(long block) {
        work(block);
        synchronized (this) {
            if (failure instanceof RuntimeException exception) {
                throw exception;
            }
            if (failure instanceof Error error) {
                throw error;
            }
        }
    }

    private void work(long block) {
        for (Turn turn = next(block); turn != null; turn = next(block)) {
            Chain chain = chains.get(turn.chain());
            try {
                chain.runBlock(turn.past().archive(), turn.past().standIn(), turn.block());
                finished(turn, chain.state());
            } catch (RuntimeException | Error thrown) {
                fail(thrown);
            }
        }
    }

    /** Returns what to do next, null when there is nothing to do until all chains are through a block. */
    private synchronized @Nullable Turn next(long until) {
        while (!closed && failure == null && !through(until)) {
            int chain = furthestBehind();
            if (chain >= 0) {
                taken[chain] = true;
                long block = done[chain] + 1;
                return new Turn(chain, block, Objects.requireNonNull(pasts[slot(block)]));
            }
            try {
                wait();
            } catch (InterruptedException interrupted) {
                Thread.currentThread().interrupt();
                fail(new IllegalStateException("sampling was interrupted", interrupted));
            }
        }
        return null;
    }

    private int furthestBehind() {
        int chosen = -1;
        for (int chain = 0; chain < done.length; chain++) {
            boolean ready = !taken[chain] && done[chain] < open;
            if (ready && (chosen < 0 || done[chain] < done[chosen])) {
                chosen = chain;
            }
        }
        return chosen;
    }

    private boolean through(long block) {
        return Arrays.stream(done).allMatch(own -> own >= block);
    }

    private synchronized void finished(Turn turn, ChainState state) {
        states[slot(turn.block())][turn.chain()] = state;
        done[turn.chain()] = turn.block();
        taken[turn.chain()] = false;
        notifyAll();
    }

    private synchronized void fail(Throwable thrown) {
        failure = failure == null ? thrown : failure;
        notifyAll();
    }

    private static int slot(long block) {
        return (int) (block % OPEN_BLOCKS);
    }
}
