package org.thirstline.io.crop;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.thirstline.io.crop.CropCalibration.DataFile;
import org.thirstline.io.crop.CropCalibration.Fitted;
import org.thirstline.io.crop.CropCalibration.ResidualError;
import org.thirstline.io.text.InputFileError;
import org.thirstline.io.text.Node;
import org.thirstline.io.text.Scalars;
import org.thirstline.io.text.Section;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.error.Check;
import org.thirstline.model.error.InputException;

/** Reads how the fitted numbers of a crop file came about. Stateless and thread-safe. */
final class CropCalibrationReader {

    static final List<String> KINDS = List.of("sd", "cv", "stated");

    private CropCalibrationReader() {}

    /**
     * Reads the section.
     *
     * @param section the section
     * @param parameters the crop, for which every draw must be possible
     */
    static CropCalibration read(Section section, CropParameters parameters) {
        List<String> names = section.values("draw_names", Scalars::text);
        List<Fitted> fitted = section.sections("fitted").stream()
                .map(CropCalibrationReader::fitted)
                .toList();
        return new CropCalibration(
                section.required("study", section.text("study")),
                section.required("date", section.value("date", Scalars::date)).toString(),
                (int) section.number("observations").orElse(0.0),
                section.flag("invented").orElse(false),
                section.sections("data").stream()
                        .map(CropCalibrationReader::file)
                        .toList(),
                fitted,
                correlations(section, fitted.size()),
                section.sections("errors").stream()
                        .map(CropCalibrationReader::error)
                        .toList(),
                names,
                section.values("draws", node -> draw(node, names, parameters)),
                section.flag("unsettled").orElse(false));
    }

    private static List<List<Double>> correlations(Section section, int fitted) {
        List<List<Double>> rows = section.values("correlations", node -> correlationRow(node, fitted));
        if (!rows.isEmpty() && rows.size() != fitted) {
            throw section.refusal(
                    "correlations",
                    InputFileError.WRONG_KIND,
                    rows.size() + " rows",
                    fitted + ", one for each fitted parameter");
        }
        return rows;
    }

    private static List<Double> correlationRow(Node.Scalar node, int fitted) {
        List<Double> row = numbers(Scalars.text(node), fitted, "fitted parameter");
        row.forEach(number -> Check.range("a correlation", number, "1", -1.0, 1.0));
        return row;
    }

    /** A draw that the crop cannot have, such as one outside the limits of a parameter, is refused. */
    private static List<Double> draw(Node.Scalar node, List<String> names, CropParameters parameters) {
        List<Double> draw = numbers(Scalars.text(node), names.size(), "of draw_names");
        Map<CropParameter, Double> values = new EnumMap<>(CropParameter.class);
        for (int i = 0; i < draw.size(); i++) {
            double value = draw.get(i);
            CropParameter.ofKey(names.get(i)).ifPresent(parameter -> values.put(parameter, value));
        }
        parameters.with(values);
        return draw;
    }

    private static List<Double> numbers(String text, int size, String ofWhat) {
        List<Double> numbers = new ArrayList<>();
        for (String number : text.split("\\s+", -1)) {
            numbers.add(finite(number));
        }
        if (numbers.size() != size) {
            throw new InputException(
                    InputFileError.WRONG_KIND, numbers.size() + " numbers", size + ", one for each " + ofWhat);
        }
        return numbers;
    }

    private static double finite(String text) {
        double number = Double.NaN;
        try {
            number = Double.parseDouble(text);
        } catch (NumberFormatException noNumber) {
            // Falls through to the one message below.
        }
        if (!Double.isFinite(number)) {
            throw new InputException(InputFileError.WRONG_KIND, "'" + text + "'", "finite numbers with blanks between");
        }
        return number;
    }

    private static DataFile file(Section section) {
        return new DataFile(
                section.required("file", section.text("file")), section.required("sha256", section.text("sha256")));
    }

    private static Fitted fitted(Section section) {
        return new Fitted(
                section.required("parameter", section.text("parameter")),
                section.number("value").orElse(Double.NaN),
                section.number("standard_error").orElse(Double.NaN),
                section.number("low").orElse(Double.NaN),
                section.number("high").orElse(Double.NaN),
                section.number("lowest").orElse(Double.NaN),
                section.number("highest").orElse(Double.NaN));
    }

    private static ResidualError error(Section section) {
        return new ResidualError(
                section.required("variable", section.text("variable")),
                section.required("kind", section.choice("kind")),
                section.number("size").orElse(Double.NaN),
                section.required("estimated", section.flag("estimated")));
    }
}
