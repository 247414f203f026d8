package org.thirstline.model.opinion;

import static java.lang.Math.exp;
import static java.lang.Math.max;
import static java.lang.Math.min;
import static java.lang.Math.pow;
import static org.thirstline.model.crop.CropParameter.*;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Map;
import java.util.TreeMap;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.weather.DailyDrivers;

/**
 * The day loop a second time, in one flat function, from the equations of docs/formulation.md: none of the engine's processes is called. It knows the stand
 * as it is, north of the equator, cut on a date, without irrigation. It is slow and long on purpose: a reader can hold it beside the page.
 */
public final class PlainDayLoop {

    /** What a day ends with, by the engine's names. */
    public final Map<DailyVariable, double[]> columns = new TreeMap<>();

    /** Water by layer and day [mm]. */
    public final double[][] soilWater;

    /** Dry matter by growth year. */
    public final Map<Integer, Double> harvestedMgHa = new TreeMap<>();

    private PlainDayLoop(int layers, int days) {
        soilWater = new double[layers][days];
    }

    private void note(DailyVariable variable, int day, double value) {
        columns.computeIfAbsent(variable, key -> new double[soilWater[0].length])[day] = value;
    }

    /** Runs a stand over its weather. */
    public static PlainDayLoop run(DailyDrivers w, FieldConditions field) {
        // ---- parameters and soil
        CropParameters p = field.crop();
        SoilLayer[] soil = field.soil().layers().toArray(SoilLayer[]::new);
        int n = soil.length;
        double[] d = new double[n];
        double[] top = new double[n];
        double[] bottom = new double[n];
        double[] wp = new double[n];
        double[] fc = new double[n];
        double[] sat = new double[n];
        double[] water = new double[n];
        for (int i = 0; i < n; i++) {
            d[i] = soil[i].thicknessM();
            top[i] = i == 0 ? 0.0 : bottom[i - 1];
            bottom[i] = top[i] + d[i];
            wp[i] = 1000.0 * d[i] * soil[i].wiltingPoint();
            fc[i] = 1000.0 * d[i] * soil[i].fieldCapacity();
            sat[i] = 1000.0 * d[i] * soil[i].saturation();
            water[i] = fc[i];
        }
        double cn2 = field.soil().curveNumber();
        double cn1 = cn2 / (2.281 - 0.01281 * cn2);
        double cn3 = cn2 / (0.427 + 0.00573 * cn2);
        double tew = fc[0] - 0.5 * wp[0];
        double rew = field.soil().readilyEvaporableMm();
        double decay = rootDecay(p.get(ROOT_SHARE_TOP_30_CM), p.get(ROOT_DEPTH_MATURE));
        double gramsPerLai = 1000.0 / p.get(SPECIFIC_LEAF_AREA);
        double k = p.get(EXTINCTION_COEFFICIENT);
        double established = field.stand().plantsPerM2() * p.get(ESTABLISHMENT_SURVIVAL);
        double co2 = max(0.0, 1.0 + p.get(CO2_RESPONSE) * (field.co2Ppm() - p.get(CO2_REFERENCE)) / 100.0);
        MonthDay cutDay = ((HarvestRule.OnDate) field.harvest()).date();
        LocalDate planting = field.stand().plantingDate();
        PlainDayLoop out = new PlainDayLoop(n, w.days());

        // ---- state
        boolean planted = false;
        boolean dead = false;
        boolean green = false;
        boolean standing = false;
        boolean leafEnded = false;
        boolean autumn = false;
        int emergedIn = 0;
        int cropOf = 0;
        double plants = 0;
        double cover = 0;
        double shoots;
        double laiMax = 1;
        double laiNew = 0;
        double vigourOfAge = 1;
        double ttEmergence = 0;
        double ttLeaf = 0;
        double coldest = Double.POSITIVE_INFINITY;
        double lai = 0;
        double deadLeaf = 0;
        double stem = 0;
        double reserve = 0;
        double litter = 0;
        double height = 0;
        double moisture = 0;
        double snow = 0;
        double airless = 0;
        double rootDepth = min(p.get(ROOT_DEPTH_YEAR_1), bottom[n - 1]);
        double rhizome = 0;
        for (int i = 0; i < 10; i++) {
            rhizome += max(0.0, w.tmean(i)) / 10.0;
        }

        for (int day = 0; day < w.days(); day++) {
            LocalDate date = w.weather().date(day);
            int year = date.getYear();
            int age = year - planting.getYear() + 1;

            // ---- 1. weather of the day
            double tmin = w.tmin(day);
            double tmax = w.tmax(day);
            double tmean = 0.5 * (tmin + tmax);
            double et0 = w.et0(day);
            double snowfall = w.rain(day) * max(0.0, min(1.0, 1.0 - tmean / 2.0));
            double liquid = w.rain(day) - snowfall;
            double melt = min(snow + snowfall, max(0.0, 2.74 * tmean));
            snow += snowfall - melt;
            double surface = tmean >= 0 ? tmean : 0.25 * tmean * exp(-snow / 25.0);
            rhizome += (surface - rhizome) / 7.0;
            double theta = sine(tmin, tmax, p.get(LEAF_BASE)) - sine(tmin, tmax, p.get(LEAF_UPPER));
            double daytime = 0.25 * tmin + 0.75 * tmax;
            double rising = (daytime - p.get(GROWTH_MIN)) / (p.get(GROWTH_OPTIMUM_LOW) - p.get(GROWTH_MIN));
            double falling = (p.get(GROWTH_MAX) - daytime) / (p.get(GROWTH_MAX) - p.get(GROWTH_OPTIMUM_HIGH));
            double warmth = max(0.0, min(1.0, min(rising, falling)));
            double par = p.get(PAR_FRACTION) * w.solar(day);
            boolean shortening = day == 0 ? w.dayLength(1) < w.dayLength(0) : w.dayLength(day) < w.dayLength(day - 1);

            // ---- 2. growth year and planting
            boolean newYear = date.getDayOfYear() == 1;
            if (newYear && day > 0 && green) {
                deadLeaf += lai * gramsPerLai;
                lai = 0;
                green = false;
                standing = true;
                coldest = Double.POSITIVE_INFINITY;
            }
            if (newYear || day == 0) {
                ttEmergence = 0;
                ttLeaf = 0;
                leafEnded = false;
                autumn = false;
            }
            if (!planted && (date.equals(planting) || (newYear && planting.isBefore(date)))) {
                planted = true;
                plants = established;
                cover = cover(p, plants, age);
                reserve = age == 1
                        ? min(p.get(RESERVE_CAPACITY), p.get(PLANTED_RESERVE) * plants)
                        : p.get(RESERVE_CAPACITY) * cover;
                coldest = Double.POSITIVE_INFINITY;
                ttEmergence = 0;
                rootDepth = min(byAge(p, age, ROOT_DEPTH_YEAR_1, ROOT_DEPTH_YEAR_2, ROOT_DEPTH_MATURE), bottom[n - 1]);
            }

            // ---- 3. harvest, emergence
            boolean cut = (green || standing) && date.isAfter(LocalDate.of(cropOf, 6, 30)) && isCutDay(date, cutDay);
            boolean emerges = false;
            if (planted && !dead && emergedIn != year) {
                ttEmergence += max(0.0, rhizome - p.get(EMERGENCE_BASE));
                emerges = ttEmergence >= p.get(EMERGENCE_THERMAL_TIME);
            }
            if (cut || (emerges && (green || standing))) {
                double above = height > field.stubbleM() ? pow(1.0 - field.stubbleM() / height, 1.5) : 0.0;
                double leaf = lai * gramsPerLai + deadLeaf;
                double taken = field.pickUpShare() * (stem * above + leaf);
                out.harvestedMgHa.put(cropOf, taken / 100.0);
                litter += stem + leaf - taken;
                coldest = green ? Double.POSITIVE_INFINITY : coldest;
                lai = 0;
                deadLeaf = 0;
                stem = 0;
                height = 0;
                green = false;
                standing = false;
            }
            if (emerges) {
                if (age > 1) {
                    double lt50 = p.get(age == 2 ? RHIZOME_LT50_FIRST_WINTER : RHIZOME_LT50);
                    double survival = 1.0 / (1.0 + exp((lt50 - coldest) / p.get(RHIZOME_KILL_WIDTH)));
                    reserve *= survival;
                    plants *= survival;
                }
                dead = plants < 0.02 * established;
            }
            if (emerges && !dead) {
                double need = p.get(RESERVE_FOR_FULL_VIGOUR) * p.get(RESERVE_CAPACITY) * cover;
                double vigour = age <= 1 ? 1.0 : min(1.0, reserve / need);
                cover = cover(p, plants, age);
                double spread = radius(p, age) / radius(p, 3);
                double perPlant =
                        byAge(p, age, SHOOTS_PER_PLANT_YEAR_1, SHOOTS_PER_PLANT_YEAR_2, SHOOTS_PER_PLANT_YEAR_3);
                perPlant *= age >= 3 ? spread * spread : 1.0;
                shoots = min(p.get(MATURE_SHOOTS), plants * perPlant) * vigour;
                double s = p.get(LEAF_AREA_SATURATION);
                double share = min(1.0, shoots / p.get(MATURE_SHOOTS));
                laiMax = p.get(MAX_LEAF_AREA_INDEX) * (1.0 - exp(-s * share)) / (1.0 - exp(-s));
                laiNew = shoots * p.get(EMERGING_LEAF_AREA);
                vigourOfAge = ageing(p, age);
                lai = min(reserve, laiNew * gramsPerLai) / gramsPerLai;
                reserve -= lai * gramsPerLai;
                green = true;
                emergedIn = year;
                cropOf = year;
                rootDepth = min(byAge(p, age, ROOT_DEPTH_YEAR_1, ROOT_DEPTH_YEAR_2, ROOT_DEPTH_MATURE), bottom[n - 1]);
            }

            // ---- 4. frost and shortening days
            coldest = min(coldest, rhizome);
            boolean ends = false;
            if (green) {
                leafEnded |= ttLeaf >= p.get(LEAF_GROWTH_END_THERMAL_TIME)
                        || (shortening && w.dayLength(day) < p.get(LEAF_GROWTH_END_DAY_LENGTH));
                autumn |= shortening && w.dayLength(day) < p.get(SENESCENCE_DAY_LENGTH);
                double half = p.get(SHOOT_FROST_HALF_RANGE);
                double killed = max(0.0, min(1.0, (p.get(SHOOT_LT50) + half - tmin) / (2.0 * half)));
                ends = shortening && tmin <= p.get(KILLING_FROST);
                killed = ends ? 1.0 : shortening ? 0.0 : killed;
                deadLeaf += killed * lai * gramsPerLai;
                lai -= killed * lai;
            }
            if (ends) {
                green = false;
                standing = true;
                coldest = Double.POSITIVE_INFINITY;
            }

            // ---- 5. light
            double f = cover > 0 ? cover * (1.0 - exp(-k * lai / cover)) : 0.0;

            // ---- 6. water
            double climate = w.cropCoefficientClimate(day) * pow(height / 3.0, 0.3);
            double kcb = lai > 0
                    ? cover * (p.get(BASAL_CROP_COEFFICIENT_FULL) + climate) * (1.0 - exp(-0.7 * lai / cover))
                    : 0.0;
            double kcMax = max(1.2 + climate, kcb + 0.05);
            double held = min(liquid, min(p.get(INTERCEPTION_PER_LAI) * lai, kcMax * et0));
            double et0Left = et0 - held / kcMax;
            double arriving = liquid - held + melt;
            double wet = 0;
            double room = 0;
            for (int i = 0; i < n; i++) {
                double within = max(0.0, min(1.0, (0.3 - top[i]) / d[i]));
                wet += within * (water[i] - wp[i]);
                room += within * (fc[i] - wp[i]);
            }
            double wetness = max(0.0, min(1.0, wet / room));
            double cn = wetness < 0.5 ? cn1 + 2.0 * wetness * (cn2 - cn1) : cn2 + (2.0 * wetness - 1.0) * (cn3 - cn2);
            double retention = 25400.0 / min(100.0, cn) - 254.0;
            double runoff = arriving > 0.2 * retention
                    ? pow(arriving - 0.2 * retention, 2) / (arriving + 0.8 * retention)
                    : 0.0;
            double flow = arriving - runoff;
            for (int i = 0; i < n; i++) {
                water[i] += flow;
                double gravity = max(0.0, min(water[i], sat[i]) - fc[i]);
                flow = max(0.0, water[i] - sat[i]);
                boolean flooded = 0.5 * (top[i] + bottom[i]) > field.soil().waterTableM();
                flow += flooded ? 0.0 : soil[i].drainageRate() * gravity;
                flow = i == n - 1 && !flooded ? min(flow, field.soil().maxDrainageMmPerDay()) : flow;
                water[i] -= flow;
            }
            double drainage = flow;
            for (int i = 0; i < n; i++) {
                if (0.5 * (top[i] + bottom[i]) > field.soil().waterTableM()) {
                    water[i] = max(water[i], sat[i]);
                }
            }
            for (int i = n - 1; i >= 0; i--) {
                double over = max(0.0, water[i] - sat[i]);
                water[i] -= over;
                if (i > 0) {
                    water[i - 1] += over;
                } else {
                    runoff += over;
                }
            }
            double lost = max(0.0, fc[0] - water[0]);
            double kr = lost <= rew ? 1.0 : max(0.0, (tew - lost) / (tew - rew));
            double ke = min(kr * (kcMax - kcb), max(0.01, 1.0 - f) * kcMax);
            double litterCover = 1.0 - exp(-p.get(LITTER_COVER_PER_G) * litter);
            double evaporation = max(0.0, min(ke * et0Left * (1.0 - 0.5 * litterCover), water[0] - 0.5 * wp[0]));
            water[0] -= evaporation;
            double demand = kcb * et0Left;
            double etc = demand + evaporation;
            double pGrowth = max(0.1, min(0.8, p.get(DEPLETION_FRACTION) + 0.04 * (5.0 - etc)));
            double pLeaf = max(0.1, min(0.8, p.get(LEAF_DEPLETION_FRACTION) + 0.04 * (5.0 - etc)));
            double[] weight = new double[n];
            double all = 0;
            for (int i = 0; i < n; i++) {
                double deep = min(bottom[i], rootDepth);
                weight[i] =
                        deep <= top[i] ? 0.0 : decay > 0 ? exp(-decay * top[i]) - exp(-decay * deep) : deep - top[i];
                all += weight[i];
            }
            double index = 0;
            double leafIndex = 0;
            for (int i = 0; i < n; i++) {
                weight[i] /= all;
                double left = (water[i] - wp[i]) / (fc[i] - wp[i]);
                index += weight[i] * max(0.0, min(1.0, left / (1.0 - pGrowth)));
                leafIndex += weight[i] * max(0.0, min(1.0, left / (1.0 - pLeaf)));
            }
            double critical = p.get(UPTAKE_COMPENSATION);
            double transpiration = 0;
            double waterFactor = 1;
            double leafWaterFactor = 1;
            if (demand > 0) {
                leafWaterFactor = min(1.0, leafIndex / critical);
                for (int i = 0; i < n; i++) {
                    double left = (water[i] - wp[i]) / (fc[i] - wp[i]);
                    double stress = max(0.0, min(1.0, left / (1.0 - pGrowth)));
                    double wanted = index > 0 ? demand / max(index, critical) * weight[i] * stress : 0.0;
                    double taken = max(0.0, min(wanted, water[i] - wp[i]));
                    water[i] -= taken;
                    transpiration += taken;
                }
                waterFactor = min(1.0, transpiration / demand);
            }
            double air = 0;
            for (int i = 0; i < n; i++) {
                air += weight[i] * (sat[i] - water[i]) / (1000.0 * d[i]);
            }
            air = max(0.0, air);
            airless = air < p.get(AERATION_LIMIT) ? airless + 1.0 : 0.0;
            double onset = p.get(AERATION_DELAY) > 0 ? min(1.0, airless / p.get(AERATION_DELAY)) : 1.0;
            double airFactor =
                    airless > 0 ? 1.0 - p.get(AERATION_SENSITIVITY) * (1.0 - air / p.get(AERATION_LIMIT)) * onset : 1.0;

            // ---- 7. growth and 8. leaf area
            double growth = 0;
            if (green) {
                double mature = p.get(RHIZOME_SHARE_MATURE);
                growth = p.get(RADIATION_USE_EFFICIENCY)
                        * co2
                        * par
                        * f
                        * warmth
                        * min(waterFactor, airFactor)
                        * vigourOfAge
                        / (1.0 - mature);
                double below = growth * byAge(p, age, RHIZOME_SHARE_YEAR_1, RHIZOME_SHARE_YEAR_2, RHIZOME_SHARE_MATURE);
                double above = growth - below;
                double onsetLoss = p.get(DROUGHT_LEAF_LOSS_ONSET);
                double drought =
                        onsetLoss > 0 ? p.get(DROUGHT_LEAF_LOSS) * max(0.0, 1.0 - waterFactor / onsetLoss) : 0.0;
                double dying = lai
                        * min(1.0, theta / p.get(LEAF_LIFE_SPAN) + drought + (autumn ? p.get(AUTUMN_LEAF_LOSS) : 0.0));
                double wanted = gramsPerLai
                        * p.get(LEAF_GROWTH_RATE)
                        * theta
                        * max(lai, laiNew)
                        * max(0.0, 1.0 - lai / laiMax)
                        * leafWaterFactor;
                double fromReserve =
                        max(0.0, 1.0 - lai / p.get(RESERVE_FED_LEAF_AREA)) * p.get(RESERVE_MOBILISATION) * reserve;
                double leaf = autumn || leafEnded ? 0.0 : min(wanted, p.get(LEAF_SHARE_MAX) * above + fromReserve);
                double paidByGrowth = min(leaf, p.get(LEAF_SHARE_MAX) * above);
                lai += leaf / gramsPerLai - dying;
                stem += above - paidByGrowth;
                reserve += below - (leaf - paidByGrowth) + p.get(LEAF_TRANSLOCATION) * dying * gramsPerLai;
                deadLeaf += (1.0 - p.get(LEAF_TRANSLOCATION)) * dying * gramsPerLai;
                ttLeaf += theta;
                height = max(height, p.get(MAX_HEIGHT) * (1.0 - exp(-stem / p.get(HEIGHT_STEM_MASS))));
                if ((autumn || leafEnded) && lai < 0.1) {
                    deadLeaf += lai * gramsPerLai;
                    lai = 0;
                    green = false;
                    standing = true;
                    coldest = Double.POSITIVE_INFINITY;
                }
            }

            // ---- 9. evening
            double doubling = pow(2.0, (rhizome - 10.0) / 10.0);
            reserve -= min(reserve, reserve * p.get(RESERVE_RESPIRATION) * doubling);
            reserve = min(reserve, p.get(RESERVE_CAPACITY) * cover);
            litter += p.get(DEAD_LEAF_FALL) * deadLeaf;
            deadLeaf -= p.get(DEAD_LEAF_FALL) * deadLeaf;
            double living = p.get(LIVING_MOISTURE) / (100.0 - p.get(LIVING_MOISTURE));
            if (standing) {
                double broken = stem * (p.get(STEM_LOSS) + (snow > 10.0 ? p.get(STEM_LOSS_SNOW) : 0.0));
                stem -= broken;
                litter += broken;
                double rate = p.get(DRYING_RATE) + p.get(DRYING_RATE_PER_ET0) * et0;
                double balance = equilibrium(tmean, w.relativeHumidity(day));
                moisture += (1.0 - exp(-rate)) * (balance - moisture) + p.get(REWETTING) * min(10.0, liquid);
                moisture = min(living, moisture);
            } else {
                moisture = living;
            }
            litter -= min(litter, litter * p.get(LITTER_DECAY) * doubling);

            // ---- what the day ends with
            out.note(DailyVariable.LEAF_AREA_INDEX, day, lai);
            out.note(DailyVariable.HEIGHT, day, height);
            out.note(DailyVariable.DEAD_LEAF, day, deadLeaf);
            out.note(DailyVariable.STEM, day, stem);
            out.note(DailyVariable.RESERVE, day, reserve);
            out.note(DailyVariable.LITTER, day, litter);
            out.note(DailyVariable.GROWTH, day, growth);
            out.note(DailyVariable.INTERCEPTED_FRACTION, day, f);
            out.note(DailyVariable.INTERCEPTION, day, held);
            out.note(DailyVariable.RUNOFF, day, runoff);
            out.note(DailyVariable.DRAINAGE, day, drainage);
            out.note(DailyVariable.SOIL_EVAPORATION, day, evaporation);
            out.note(DailyVariable.TRANSPIRATION, day, transpiration);
            out.note(DailyVariable.WATER_FACTOR, day, waterFactor);
            out.note(DailyVariable.LEAF_WATER_FACTOR, day, leafWaterFactor);
            out.note(DailyVariable.AERATION_FACTOR, day, airFactor);
            out.note(DailyVariable.SNOW, day, snow);
            out.note(DailyVariable.RHIZOME_TEMPERATURE, day, rhizome);
            double wetBasis = 100.0 * moisture / (1.0 + moisture);
            out.note(DailyVariable.MOISTURE, day, green || standing ? wetBasis : Double.NaN);
            for (int i = 0; i < n; i++) {
                out.soilWater[i][day] = water[i];
            }
        }
        return out;
    }

    /** The rule's day of the year, at least six months into the growth year (checked by the caller). */
    private static boolean isCutDay(LocalDate date, MonthDay cutDay) {
        return MonthDay.from(date).equals(cutDay);
    }

    private static double byAge(
            CropParameters p, int age, CropParameter first, CropParameter second, CropParameter on) {
        return p.get(age <= 1 ? first : age == 2 ? second : on);
    }

    private static double radius(CropParameters p, int age) {
        return min(p.get(CLUMP_RADIUS_MAX), p.get(CLUMP_RADIUS_YEAR_1) + (age - 1) * p.get(CLUMP_SPREAD));
    }

    private static double cover(CropParameters p, double plants, int age) {
        return 1.0 - exp(-plants * Math.PI * pow(radius(p, age), 2));
    }

    private static double ageing(CropParameters p, int age) {
        double years = age - p.get(DECLINE_ONSET_AGE);
        double rate = p.get(DECLINE_PER_YEAR);
        if (years <= 0 || rate <= 0) {
            return 1.0;
        }
        boolean exponential = p.get(DECLINE_EXPONENTIAL) >= 0.5;
        return max(p.get(DECLINE_FLOOR), exponential ? pow(1.0 - rate, years) : 1.0 - rate * years);
    }

    /** Thermal time above a threshold of a day whose temperature follows a sine. */
    private static double sine(double tmin, double tmax, double threshold) {
        double mean = 0.5 * (tmin + tmax);
        double half = 0.5 * (tmax - tmin);
        if (tmax <= threshold) {
            return 0.0;
        }
        if (tmin >= threshold) {
            return mean - threshold;
        }
        double angle = Math.asin((threshold - mean) / half);
        return ((mean - threshold) * (Math.PI / 2.0 - angle) + half * Math.cos(angle)) / Math.PI;
    }

    /** The rate a of 1 - exp(-a z) that puts a share of all roots above 0.3 m, by Newton's method. */
    private static double rootDecay(double share, double depth) {
        if (share * depth <= 0.3) {
            return 0.0;
        }
        double a = 1.0;
        for (int i = 0; i < 200; i++) {
            double value = (1.0 - exp(-0.3 * a)) / (1.0 - exp(-depth * a)) - share;
            double step = 1.0e-6 * a;
            double next = (1.0 - exp(-0.3 * (a + step))) / (1.0 - exp(-depth * (a + step))) - share;
            a = max(1.0e-6, a - value * step / (next - value));
        }
        return a;
    }

    /** Simard (1968), three pieces by humidity, in per cent of dry mass. */
    private static double equilibrium(double celsius, double humidity) {
        double t = 32.0 + 9.0 / 5.0 * celsius;
        double h = max(0.0, min(100.0, humidity));
        double percent = h < 10.0
                ? 0.03229 + 0.281073 * h - 0.000578 * h * t
                : h < 50.0
                        ? 2.22749 + 0.160107 * h - 0.014784 * t
                        : 21.0606 + 0.005565 * h * h - 0.00035 * h * t - 0.483199 * h;
        return max(0.01, percent / 100.0);
    }
}
