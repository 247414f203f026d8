package org.thirstline.calibration.posterior;

import java.util.Arrays;
import java.util.List;

/**
 * Everything a sampler needs to go on as if it had never stopped: the chains and the archive of past states. Random numbers need no
 * place in it, because they follow from the seed, the chain and the block. Immutable and thread-safe.
 */
public final class SamplerState {

    private final Header header;
    private final List<ChainState> chains;
    private final double[] pastPoints;
    private final double[] pastLogDensities;

    /**
     * What a state belongs to and how far it is.
     *
     * @param problem one line that tells problems apart
     * @param options one line that tells options apart
     * @param names of the parameters
     * @param chains number of chains
     * @param blockLength generations of a block
     * @param generations done
     * @param priorDraws entries of the archive that were drawn from the priors before sampling began
     */
    record Header(
            String problem,
            String options,
            List<String> names,
            int chains,
            int blockLength,
            long generations,
            int priorDraws) {

        Header {
            names = List.copyOf(names);
        }
    }

    SamplerState(Header header, List<ChainState> chains, Archive archive) {
        this(header, chains, archive.points(), archive.logDensities());
    }

    /** Takes over the arrays. */
    SamplerState(Header header, List<ChainState> chains, double[] pastPoints, double[] pastLogDensities) {
        this.header = header;
        this.chains = List.copyOf(chains);
        this.pastPoints = pastPoints;
        this.pastLogDensities = pastLogDensities;
    }

    /** Returns the generations done: every chain has made so many proposals. */
    public long generations() {
        return header.generations;
    }

    /** Returns how often the likelihood was asked. */
    public long evaluations() {
        return chains.stream().mapToLong(ChainState::evaluations).sum();
    }

    /** Returns the share of proposals that were accepted; NaN before the first. */
    public double acceptedShare() {
        return chains.stream().mapToLong(ChainState::accepted).sum() / ((double) header.chains * header.generations);
    }

    /**
     * Returns the draws so far: the chains' states at the end of each block.
     *
     * @param discardedShare share of the draws of each chain to leave out at the start, 0 to below 1
     */
    public PosteriorDraws draws(double discardedShare) {
        int blocks = (pastLogDensities.length - header.priorDraws) / header.chains;
        int first = (int) Math.round(blocks * discardedShare);
        int kept = Math.max(0, blocks - first);
        int dimension = header.names.size();
        double[][][] draws = new double[header.chains][kept][];
        double[][] densities = new double[header.chains][kept];
        for (int chain = 0; chain < header.chains; chain++) {
            for (int draw = 0; draw < kept; draw++) {
                int at = header.priorDraws + (first + draw) * header.chains + chain;
                draws[chain][draw] = Arrays.copyOfRange(pastPoints, at * dimension, (at + 1) * dimension);
                densities[chain][draw] = pastLogDensities[at];
            }
        }
        return new PosteriorDraws(header.names, draws, densities);
    }

    /** Returns the state as lines of text with exact numbers; the last line guards against a file cut short. */
    public List<String> encode() {
        return StateText.encode(this);
    }

    /**
     * Reads what {@link #encode} wrote.
     *
     * @param lines all lines
     * @throws org.thirstline.model.error.InputException if lines are missing or changed
     */
    public static SamplerState decode(List<String> lines) {
        return StateText.decode(lines);
    }

    Header header() {
        return header;
    }

    List<ChainState> chains() {
        return chains;
    }

    int pastSize() {
        return pastLogDensities.length;
    }

    double pastLogDensity(int index) {
        return pastLogDensities[index];
    }

    double[] pastPoint(int index) {
        int dimension = header.names.size();
        return Arrays.copyOfRange(pastPoints, index * dimension, (index + 1) * dimension);
    }

    Archive archive() {
        return new Archive(header.names.size(), pastPoints, pastLogDensities);
    }
}
