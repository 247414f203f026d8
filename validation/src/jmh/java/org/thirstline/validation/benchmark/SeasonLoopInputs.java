package org.thirstline.validation.benchmark;

import static org.thirstline.model.crop.CropParameter.*;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.thirstline.model.crop.BiomassGrowth;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.DryDown;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.crop.RhizomeReserve;
import org.thirstline.model.crop.RhizomeZone;
import org.thirstline.model.crop.ThermalTime;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.soil.RootUptake;
import org.thirstline.model.soil.Snowpack;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.weather.DailyDrivers;

/** What the season loop in C reads: parameters in the order of its enum, the soil, columns by day, days by year. For a field north of the equator. */
final class SeasonLoopInputs {

    /** In the order of the C enum; CO₂ is a factor there, put in place of the response. */
    private static final List<CropParameter> ORDER = List.of(
            ESTABLISHMENT_SURVIVAL,
            SHOOTS_PER_PLANT_YEAR_1,
            SHOOTS_PER_PLANT_YEAR_2,
            SHOOTS_PER_PLANT_YEAR_3,
            MATURE_SHOOTS,
            CLUMP_RADIUS_YEAR_1,
            CLUMP_SPREAD,
            CLUMP_RADIUS_MAX,
            LEAF_AREA_SATURATION,
            MAX_LEAF_AREA_INDEX,
            DECLINE_ONSET_AGE,
            DECLINE_PER_YEAR,
            DECLINE_EXPONENTIAL,
            DECLINE_FLOOR,
            ROOT_DEPTH_YEAR_1,
            ROOT_DEPTH_YEAR_2,
            ROOT_DEPTH_MATURE,
            EMERGENCE_THERMAL_TIME,
            LEAF_GROWTH_END_THERMAL_TIME,
            LEAF_GROWTH_END_DAY_LENGTH,
            SENESCENCE_DAY_LENGTH,
            LEAF_SHARE_MAX,
            RESERVE_FED_LEAF_AREA,
            LEAF_TRANSLOCATION,
            MAX_HEIGHT,
            HEIGHT_STEM_MASS,
            EXTINCTION_COEFFICIENT,
            LEAF_GROWTH_RATE,
            LEAF_LIFE_SPAN,
            DROUGHT_LEAF_LOSS,
            DROUGHT_LEAF_LOSS_ONSET,
            AUTUMN_LEAF_LOSS,
            EMERGING_LEAF_AREA,
            SPECIFIC_LEAF_AREA,
            RADIATION_USE_EFFICIENCY,
            RHIZOME_SHARE_YEAR_1,
            RHIZOME_SHARE_YEAR_2,
            RHIZOME_SHARE_MATURE,
            CO2_RESPONSE,
            RESERVE_CAPACITY,
            RESERVE_FOR_FULL_VIGOUR,
            RESERVE_RESPIRATION,
            RESERVE_MOBILISATION,
            PLANTED_RESERVE,
            DEAD_LEAF_FALL,
            STEM_LOSS,
            STEM_LOSS_SNOW,
            LIVING_MOISTURE,
            REWETTING,
            SHOOT_LT50,
            SHOOT_FROST_HALF_RANGE,
            KILLING_FROST,
            RHIZOME_LT50_FIRST_WINTER,
            RHIZOME_LT50,
            RHIZOME_KILL_WIDTH,
            INTERCEPTION_PER_LAI,
            BASAL_CROP_COEFFICIENT_FULL,
            DEPLETION_FRACTION,
            LEAF_DEPLETION_FRACTION,
            UPTAKE_COMPENSATION,
            AERATION_LIMIT,
            AERATION_DELAY,
            AERATION_SENSITIVITY,
            LITTER_COVER_PER_G,
            LITTER_DECAY);

    private static final int COLUMNS = 17;

    private final DailyDrivers w;
    private final FieldConditions field;
    private final LocalDate start;
    private final int years;

    SeasonLoopInputs(DailyDrivers drivers, FieldConditions field) {
        this.w = drivers;
        this.field = field;
        start = drivers.weather().start();
        years = drivers.weather().end().getYear() - start.getYear() + 1;
    }

    int years() {
        return years;
    }

    void write(Path file) throws IOException {
        int bytes = 4 * (5 + 4 * (years + 1)) + 8 * (ORDER.size() + 9 + 5 * layers().size() + COLUMNS * w.days());
        ByteBuffer to = ByteBuffer.allocate(bytes).order(ByteOrder.nativeOrder());
        to.putInt(w.days())
                .putInt(years)
                .putInt(layers().size())
                .putInt(ORDER.size())
                .putInt(COLUMNS);
        putParameters(to);
        putSoil(to);
        for (double[] column : columns()) {
            for (double value : column) {
                to.putDouble(value);
            }
        }
        putYears(to);
        Files.write(file, to.array());
    }

    private List<SoilLayer> layers() {
        return field.soil().layers();
    }

    private void putParameters(ByteBuffer to) {
        double hundreds = (field.co2Ppm() - field.crop().get(CO2_REFERENCE)) / 100.0;
        for (CropParameter parameter : ORDER) {
            double value = field.crop().get(parameter);
            to.putDouble(parameter == CO2_RESPONSE ? Math.max(0.0, 1.0 + value * hundreds) : value);
        }
        to.putDouble(field.stand().plantsPerM2());
        to.putDouble(field.stubbleM());
        to.putDouble(field.pickUpShare());
        to.putDouble(field.soil().curveNumber());
        to.putDouble(field.soil().readilyEvaporableMm());
        to.putDouble(field.soil().maxDrainageMmPerDay());
        to.putDouble(RootUptake.decayForShare(
                field.crop().get(ROOT_SHARE_TOP_30_CM), field.crop().get(ROOT_DEPTH_MATURE)));
        to.putDouble(day(field.stand().plantingDate()));
        to.putDouble(start.getYear() - field.stand().plantingDate().getYear() + 1);
    }

    private void putSoil(ByteBuffer to) {
        layers().forEach(layer -> to.putDouble(layer.thicknessM()));
        layers().forEach(layer -> to.putDouble(layer.wiltingPoint() * layer.thicknessM() * 1000.0));
        layers().forEach(layer -> to.putDouble(layer.fieldCapacity() * layer.thicknessM() * 1000.0));
        layers().forEach(layer -> to.putDouble(layer.saturation() * layer.thicknessM() * 1000.0));
        layers().forEach(layer -> to.putDouble(layer.drainageRate()));
    }

    private double[][] columns() {
        double[][] c = new double[COLUMNS][w.days()];
        BiomassGrowth growth = new BiomassGrowth(field.crop(), field.co2Ppm());
        DryDown dryDown = new DryDown(field.crop());
        double snow = 0.0;
        double rhizome = 0.0;
        for (int day = 0; day < 10; day++) {
            rhizome += Math.max(0.0, w.tmean(day)) / 10.0;
        }
        for (int day = 0; day < w.days(); day++) {
            double mean = w.tmean(day);
            double snowfall = Snowpack.snowfall(w.rain(day), mean);
            double melt = Snowpack.melt(snow + snowfall, mean);
            snow += snowfall - melt;
            rhizome = RhizomeZone.temperature(rhizome, mean, snow);
            double theta = ThermalTime.singleSine(
                    w.tmin(day),
                    w.tmax(day),
                    field.crop().get(LEAF_BASE),
                    field.crop().get(LEAF_UPPER));
            double warmth = growth.temperatureFactor(BiomassGrowth.daytimeTemperature(w.tmin(day), w.tmax(day)));
            int later = Math.max(1, day);
            double shorten = w.dayLength(later) < w.dayLength(later - 1) ? 1.0 : 0.0;
            double[] row = {
                w.tmin(day),
                w.rain(day),
                w.et0(day),
                w.dayLength(day),
                w.cropCoefficientClimate(day),
                w.rain(day) - snowfall,
                melt,
                snow,
                rhizome,
                Math.max(0.0, rhizome - field.crop().get(EMERGENCE_BASE)),
                theta,
                warmth,
                growth.par(w.solar(day)),
                DryDown.equilibrium(mean, w.relativeHumidity(day)),
                dryDown.approach(w.et0(day)),
                RhizomeReserve.factorOfTemperature(rhizome),
                shorten
            };
            for (int column = 0; column < COLUMNS; column++) {
                c[column][day] = row[column];
            }
        }
        return c;
    }

    private void putYears(ByteBuffer to) {
        for (int i = 0; i <= years; i++) {
            to.putInt(day(LocalDate.of(start.getYear() + i, 1, 1)));
        }
        for (int i = 0; i <= years; i++) {
            to.putInt(holdsWindow(i) ? day(windowFrom(i)) : Integer.MAX_VALUE);
        }
        for (int i = 0; i <= years; i++) {
            to.putInt(holdsWindow(i) ? day(windowTo(i)) : Integer.MIN_VALUE);
        }
        LocalDate cut = ((HarvestRule.OnDate) field.harvest()).date().atYear(start.getYear() + 1);
        for (int i = 0; i <= years; i++) {
            to.putInt(day(cut.plusYears(i)));
        }
    }

    private boolean holdsWindow(int year) {
        return day(windowFrom(year)) >= 0 && day(windowTo(year)) < w.days();
    }

    private LocalDate windowFrom(int year) {
        return field.season().start(w.site(), start.getYear() + year);
    }

    private LocalDate windowTo(int year) {
        return field.season().end(w.site(), start.getYear() + year);
    }

    private int day(LocalDate date) {
        return (int) ChronoUnit.DAYS.between(start, date);
    }
}
