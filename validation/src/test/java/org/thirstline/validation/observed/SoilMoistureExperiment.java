package org.thirstline.validation.observed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.thirstline.calibration.fit.FitParameter;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.validation.observed.Experiment.Item;
import org.thirstline.validation.observed.SoilWaterStudy.Reading;
import org.thirstline.validation.observed.SoilWaterStudy.Station;

/**
 * Water content under grass at the stations that stand on silt loam or for which it is taken: wilting point and field capacity between the ends FAO-56
 * Table 19 gives for silt loam. Every tenth day from April to October.
 */
final class SoilMoistureExperiment {

    private static final int EVERY = 10;

    private SoilMoistureExperiment() {}

    static Experiment of() {
        List<Item> items = new ArrayList<>();
        for (Station station : SoilWaterStudy.STATIONS) {
            if (station.soil() == SoilWaterStudy.SILT_LOAM) {
                Cover cover = new Cover(station.drivers());
                for (Reading reading : SoilWaterStudy.readings(station, cover.drivers)) {
                    if (reading.day() % EVERY == 0) {
                        items.add(new Item(station.id(), station.id(), reading.content(), point -> cover.at(point)
                                .content(reading.sensorCm(), reading.day())));
                    }
                }
            }
        }
        return new Experiment(
                "soil water under grass",
                "m³/m³",
                items,
                List.of(
                        FitParameter.between("wilting point, m³/m³", 0.15, 0.09, 0.21),
                        FitParameter.between("field capacity, m³/m³", 0.31, 0.22, 0.36)));
    }

    static SoilProfile soil(double[] point) {
        return GrassCover.profile(point[0], point[1], point[1] + 0.15, 0.7, 61.0);
    }

    /** The grass of one station, the last point kept. Confined to one thread. */
    private static final class Cover {

        private final DailyDrivers drivers;
        private double[] last = {};
        private GrassCover grass;

        Cover(DailyDrivers drivers) {
            this.drivers = drivers;
        }

        GrassCover at(double[] point) {
            if (!Arrays.equals(point, last)) {
                grass = GrassCover.run(drivers, soil(point));
                last = point.clone();
            }
            return grass;
        }
    }
}
