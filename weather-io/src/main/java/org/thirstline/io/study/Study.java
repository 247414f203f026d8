package org.thirstline.io.study;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.thirstline.io.crop.CropFile;
import org.thirstline.io.text.YearSpan;
import org.thirstline.model.crop.Stand;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.GrowingSeason;
import org.thirstline.model.weather.Site;

/**
 * A study as its file describes it, everything checked and in our units. Immutable and thread-safe.
 *
 * @param file the study file
 * @param title what it is about
 * @param invented whether place and numbers are made up
 * @param site where
 * @param longitudeDeg longitude, east positive [°], if the file says
 * @param weather where the weather comes from
 * @param crop the grass
 * @param cropPath the crop file, if it is not one that comes with the program
 * @param stand the planting
 * @param zones parts of the field with their soils, at least one
 * @param management cut, irrigation and air
 * @param season window of seasonal sums
 * @param normalYears years of the normal, if the file says
 * @param years growth years to report, if the file says
 * @param plots plot data, if the file says
 * @param classes years the user calls dry or wet
 * @param calibration what 'calibrate' fits to the plot data
 * @param assumptions what was assumed where the file says nothing, in reading order
 */
public record Study(
        Path file,
        String title,
        boolean invented,
        Site site,
        OptionalDouble longitudeDeg,
        WeatherSource weather,
        CropFile crop,
        Optional<Path> cropPath,
        Stand stand,
        List<Zone> zones,
        Management management,
        GrowingSeason season,
        Optional<YearSpan> normalYears,
        Optional<YearSpan> years,
        Optional<Path> plots,
        SeasonClasses classes,
        CalibrationPlan calibration,
        List<Assumption> assumptions) {

    /** Copies the lists. */
    public Study {
        zones = List.copyOf(zones);
        assumptions = List.copyOf(assumptions);
    }

    /** Returns everything about the stand in a zone but its weather. */
    public FieldConditions field(Zone zone) {
        return new FieldConditions(
                crop.parameters(),
                stand,
                zone.soil(),
                management.harvest(),
                management.stubbleM(),
                management.pickUpShare(),
                management.irrigation(),
                season,
                management.co2Ppm());
    }

    /** Returns this study with only some growth years reported. */
    public Study withYears(YearSpan reported) {
        return new Study(
                file,
                title,
                invented,
                site,
                longitudeDeg,
                weather,
                crop,
                cropPath,
                stand,
                zones,
                management,
                season,
                normalYears,
                Optional.of(reported),
                plots,
                classes,
                calibration,
                assumptions);
    }

    /** Returns every file the study reads, itself first. */
    public List<Path> inputFiles() {
        List<Path> files = new ArrayList<>();
        files.add(file);
        files.addAll(weather.files());
        cropPath.ifPresent(files::add);
        plots.ifPresent(files::add);
        return files;
    }
}
