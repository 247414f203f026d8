package org.thirstline.calibration.sweep;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.function.Function;
import org.thirstline.io.study.CellRow;
import org.thirstline.io.study.CellTable;
import org.thirstline.io.study.Study;

/**
 * Many cells of a table, in its order. Cells are read in blocks; those of a block with the same weather are simulated together, so that
 * memory holds one block and the weather used last, however long the table. Confined to one sweep.
 */
public final class Sweep {

    /** Cells read at once: enough of them share weather, and few are lost when a sweep is interrupted. */
    private static final int BLOCK = 4096;

    /** Cells simulated as one task. */
    private static final int TASK = 16;

    private final Path table;
    private final SweepOptions options;
    private final CellRun cells;
    private int blocks;

    /**
     * Prepares a sweep.
     *
     * @param study what holds where the table is silent
     * @param table the cells
     * @param options how to do it
     */
    public Sweep(Study study, Path table, SweepOptions options) {
        this.table = table;
        this.options = options;
        cells = new CellRun(study, table, options);
    }

    /**
     * Simulates the cells.
     *
     * @param done cells at the start of the table that are left out
     * @param each what is made of every outcome, by any thread
     * @param sink takes what was made, block after block, in the order of the table
     * @param progress called after every cell, by any thread
     */
    public <T> void run(int done, Function<CellOutcome, T> each, Consumer<List<T>> sink, Runnable progress) {
        ExecutorService pool = Executors.newFixedThreadPool(options.threads());
        try (CellTable rows = CellTable.open(table)) {
            for (int i = 0; i < done; i++) {
                rows.next();
            }
            for (List<CellRow> block = block(rows); !block.isEmpty(); block = block(rows)) {
                sink.accept(simulate(block, outcome -> finished(each.apply(outcome), progress), pool));
            }
        } finally {
            pool.shutdownNow();
        }
    }

    private static <T> T finished(T made, Runnable progress) {
        progress.run();
        return made;
    }

    private static List<CellRow> block(CellTable rows) {
        List<CellRow> block = new ArrayList<>();
        for (CellRow row = rows.next(); row != null; row = rows.next()) {
            block.add(row);
            if (block.size() == BLOCK) {
                break;
            }
        }
        return block;
    }

    private <T> List<T> simulate(List<CellRow> block, Function<CellOutcome, T> each, ExecutorService pool) {
        List<T> made = new ArrayList<>(Collections.nCopies(block.size(), null));
        List<Future<?>> tasks = new ArrayList<>();
        for (List<Integer> task : tasks(block)) {
            tasks.add(pool.submit(() -> {
                for (int index : task) {
                    T result = each.apply(cells.outcome(block.get(index)));
                    synchronized (made) {
                        made.set(index, result);
                    }
                }
            }));
        }
        tasks.forEach(Sweep::await);
        return made;
    }

    /** Cells with the same weather, a few at a time; every second block backwards, so that it starts with weather still at hand. */
    private List<List<Integer>> tasks(List<CellRow> block) {
        Map<String, List<Integer>> byWeather = new LinkedHashMap<>();
        for (int i = 0; i < block.size(); i++) {
            byWeather
                    .computeIfAbsent(block.get(i).weatherKey(), key -> new ArrayList<>())
                    .add(i);
        }
        List<List<Integer>> tasks = new ArrayList<>();
        for (List<Integer> together : byWeather.values()) {
            for (int from = 0; from < together.size(); from += TASK) {
                tasks.add(together.subList(from, Math.min(together.size(), from + TASK)));
            }
        }
        if (blocks++ % 2 == 1) {
            Collections.reverse(tasks);
        }
        return tasks;
    }

    private static void await(Future<?> task) {
        try {
            task.get();
        } catch (ExecutionException failed) {
            throw new IllegalStateException(failed.getCause());
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(interrupted);
        }
    }
}
