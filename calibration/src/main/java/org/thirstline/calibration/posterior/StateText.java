package org.thirstline.calibration.posterior;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.zip.CRC32;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.InputException;

/** A sampler state as text: one fact a line, numbers in hexadecimal so that they come back to the last bit. */
final class StateText {

    private static final String TITLE = "sampler state, version 1";

    private StateText() {}

    static List<String> encode(SamplerState state) {
        SamplerState.Header header = state.header();
        List<String> lines = new ArrayList<>();
        lines.add(TITLE);
        lines.add("problem " + header.problem());
        lines.add("options " + header.options());
        lines.add("parameters " + header.names().size());
        header.names().forEach(name -> lines.add("name " + name));
        lines.add("chains " + header.chains());
        lines.add("block " + header.blockLength());
        lines.add("generations " + header.generations());
        lines.add("prior-draws " + header.priorDraws());
        lines.add("past-states " + state.pastSize());
        for (ChainState chain : state.chains()) {
            String counts = "chain " + chain.accepted() + " " + chain.evaluations();
            lines.add(counts + numbers(chain.logDensity(), chain.point()));
        }
        for (int index = 0; index < state.pastSize(); index++) {
            lines.add("past" + numbers(state.pastLogDensity(index), state.pastPoint(index)));
        }
        lines.add("end " + checksum(lines));
        return lines;
    }

    private static String numbers(double logDensity, double[] point) {
        StringBuilder text = new StringBuilder(" ").append(Double.toHexString(logDensity));
        for (double value : point) {
            text.append(' ').append(Double.toHexString(value));
        }
        return text.toString();
    }

    private static String checksum(List<String> lines) {
        CRC32 sum = new CRC32();
        for (String line : lines) {
            sum.update(line.getBytes(StandardCharsets.UTF_8));
            sum.update('\n');
        }
        return Long.toHexString(sum.getValue());
    }

    static SamplerState decode(List<String> lines) {
        if (lines.isEmpty() || !lines.get(0).equals(TITLE)) {
            throw unreadable("it does not start with '" + TITLE + "'");
        }
        int last = lines.size() - 1;
        if (!lines.get(last).equals("end " + checksum(lines.subList(0, last)))) {
            throw unreadable("it is cut short or was changed");
        }
        try {
            return read(lines.subList(1, last).iterator());
        } catch (NumberFormatException | NoSuchElementException | IndexOutOfBoundsException broken) {
            throw unreadable("a line is missing or is no number (" + broken.getMessage() + ")");
        }
    }

    private static SamplerState read(Iterator<String> lines) {
        String problem = value(lines, "problem");
        String options = value(lines, "options");
        int dimension = Integer.parseInt(value(lines, "parameters"));
        List<String> names = new ArrayList<>();
        for (int i = 0; i < dimension; i++) {
            names.add(value(lines, "name"));
        }
        int chains = Integer.parseInt(value(lines, "chains"));
        int block = Integer.parseInt(value(lines, "block"));
        long generations = Long.parseLong(value(lines, "generations"));
        int priorDraws = Integer.parseInt(value(lines, "prior-draws"));
        int past = Integer.parseInt(value(lines, "past-states"));
        return readStates(
                lines, new SamplerState.Header(problem, options, names, chains, block, generations, priorDraws), past);
    }

    private static SamplerState readStates(Iterator<String> lines, SamplerState.Header header, int past) {
        int chains = header.chains();
        int dimension = header.names().size();
        double[] points = new double[chains * dimension];
        double[] densities = new double[chains];
        List<ChainState> states = new ArrayList<>();
        for (int chain = 0; chain < chains; chain++) {
            String[] cells = value(lines, "chain").split(" ");
            readNumbers(cells, 2, chain, densities, points);
            states.add(new ChainState(
                    Arrays.copyOfRange(points, chain * dimension, (chain + 1) * dimension),
                    densities[chain],
                    Long.parseLong(cells[0]),
                    Long.parseLong(cells[1])));
        }
        double[] pastPoints = new double[past * dimension];
        double[] pastDensities = new double[past];
        for (int index = 0; index < past; index++) {
            readNumbers(value(lines, "past").split(" "), 0, index, pastDensities, pastPoints);
        }
        return new SamplerState(header, states, pastPoints, pastDensities);
    }

    private static void readNumbers(String[] cells, int from, int index, double[] densities, double[] points) {
        densities[index] = Double.parseDouble(cells[from]);
        int dimension = points.length / densities.length;
        for (int i = 0; i < dimension; i++) {
            points[index * dimension + i] = Double.parseDouble(cells[from + 1 + i]);
        }
    }

    private static String value(Iterator<String> lines, String key) {
        String line = lines.next();
        if (!line.startsWith(key + " ")) {
            throw unreadable("'" + key + "' was expected, but the line is '" + line + "'");
        }
        return line.substring(key.length() + 1);
    }

    private static InputException unreadable(String why) {
        return new InputException(CalibrationError.SAMPLER_STATE_UNREADABLE, why);
    }
}
