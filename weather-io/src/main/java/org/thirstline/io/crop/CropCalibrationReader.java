package org.thirstline.io.crop;

import java.util.ArrayList;
import java.util.List;
import org.thirstline.io.crop.CropCalibration.DataFile;
import org.thirstline.io.crop.CropCalibration.Fitted;
import org.thirstline.io.crop.CropCalibration.ResidualError;
import org.thirstline.io.text.InputFileError;
import org.thirstline.io.text.Scalars;
import org.thirstline.io.text.Section;
import org.thirstline.model.error.InputException;

/** Reads how the fitted numbers of a crop file came about. Stateless and thread-safe. */
final class CropCalibrationReader {

    static final List<String> KINDS = List.of("sd", "cv", "stated");

    private CropCalibrationReader() {}

    static CropCalibration read(Section section) {
        List<String> names = section.values("draw_names", Scalars::text);
        List<List<Double>> draws = section.values("draws", node -> draw(Scalars.text(node), names.size()));
        return new CropCalibration(
                section.required("study", section.text("study")),
                section.required("date", section.value("date", Scalars::date)).toString(),
                (int) section.number("observations").orElse(0.0),
                section.flag("invented").orElse(false),
                section.sections("data").stream()
                        .map(CropCalibrationReader::file)
                        .toList(),
                section.sections("fitted").stream()
                        .map(CropCalibrationReader::fitted)
                        .toList(),
                section.sections("errors").stream()
                        .map(CropCalibrationReader::error)
                        .toList(),
                names,
                draws);
    }

    private static List<Double> draw(String text, int size) {
        List<Double> numbers = new ArrayList<>();
        for (String number : text.split("\\s+", -1)) {
            try {
                numbers.add(Double.valueOf(number));
            } catch (NumberFormatException noNumber) {
                throw new InputException(InputFileError.WRONG_KIND, "'" + number + "'", "numbers with blanks between");
            }
        }
        if (numbers.size() != size) {
            throw new InputException(
                    InputFileError.WRONG_KIND, numbers.size() + " numbers", size + ", one for each of draw_names");
        }
        return numbers;
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
                section.number("high").orElse(Double.NaN));
    }

    private static ResidualError error(Section section) {
        return new ResidualError(
                section.required("variable", section.text("variable")),
                section.required("kind", section.choice("kind")),
                section.number("size").orElse(Double.NaN),
                section.required("estimated", section.flag("estimated")));
    }
}
