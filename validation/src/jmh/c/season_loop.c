/*
 * The season loop of docs/formulation.md as one plain C function, the yardstick for the engine's speed: same equations, same layers, same
 * precomputed columns, season totals only. It knows a stand as it is, cut on a date, free of groundwater and irrigation.
 *
 *   season_loop INPUT OUTPUT REPEATS
 *
 * INPUT holds the counts (int32: days, years, layers, parameters, columns), then doubles: parameters, site scalars, layers, columns by day, and
 * int32 tables by year. OUTPUT gets the season totals. The shortest of REPEATS runs is printed in nanoseconds.
 */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum parameter {
    ESTABLISHMENT_SURVIVAL, SHOOTS_1, SHOOTS_2, SHOOTS_3, MATURE_SHOOTS, CLUMP_RADIUS_1, CLUMP_SPREAD, CLUMP_RADIUS_MAX,
    LEAF_SATURATION, MAX_LAI, ONSET_AGE, DECLINE, DECLINE_EXPONENTIAL, DECLINE_FLOOR, ROOTS_1, ROOTS_2, ROOTS_3,
    EMERGENCE_SUM, LEAF_END_SUM, LEAF_END_DAY_LENGTH, SENESCENCE_DAY_LENGTH, LEAF_SHARE_MAX, FED_LAI, TRANSLOCATION,
    MAX_HEIGHT, HEIGHT_STEM, EXTINCTION, LEAF_RATE, LEAF_LIFE, DROUGHT_LOSS, DROUGHT_ONSET, AUTUMN_LOSS, EMERGING_LEAF,
    SPECIFIC_LEAF_AREA, RUE, SHARE_1, SHARE_2, SHARE_3, CO2_FACTOR, CAPACITY, FULL_VIGOUR, RESPIRATION, MOBILISATION,
    PLANTED_RESERVE, LEAF_FALL, STEM_LOSS, SNOW_LOSS, LIVING_MOISTURE, REWETTING, SHOOT_LT50, SHOOT_HALF, KILLING_FROST,
    LT50_FIRST, LT50_LATER, KILL_WIDTH, INTERCEPTION, FULL_BASAL, DEPLETION, LEAF_DEPLETION, COMPENSATION, AIR_LIMIT,
    AIR_DELAY, AIR_SENSITIVITY, LITTER_COVER, LITTER_DECAY, PARAMETERS
};

enum scalar { PLANTS, STUBBLE, PICK_UP, CURVE_NUMBER, REW, MAX_DRAINAGE, ROOT_DECAY, PLANTING_DAY, FIRST_AGE, SCALARS };

enum column {
    TMIN, RAIN, ET0, DAY_LENGTH, CLIMATE, LIQUID, MELT, SNOW, RHIZOME, EMERGENCE_TT, LEAF_TT, WARMTH, PAR, EQUILIBRIUM,
    DRYING, RATE, SHORTEN, COLUMNS
};

enum table { FIRST_DAY, WINDOW_FROM, WINDOW_TO, CUT_DAY, TABLES };

enum total {
    T_HARVESTED, T_PEAK, T_RAIN, T_ET0, T_TRANSPIRATION, T_EVAPORATION, T_RUNOFF, T_DRAINAGE, T_HELD, T_PAR, T_WATER_FACTOR, T_STRESSED,
    T_MAX_LAI, T_MOISTURE, T_FULL_CANOPY, TOTALS
};

enum { MAX_LAYERS = 40, BARE = 0, GREEN = 1, STANDING = 2 };

struct input {
    int days, years, layers;
    double p[PARAMETERS];
    double s[SCALARS];
    double thick[MAX_LAYERS], wp[MAX_LAYERS], fc[MAX_LAYERS], sat[MAX_LAYERS], rate[MAX_LAYERS];
    const double *col[COLUMNS];
    const int32_t *tab[TABLES];
};

static inline double lesser(double a, double b) { return a < b ? a : b; }
static inline double greater(double a, double b) { return a > b ? a : b; }
static inline double within(double x) { return greater(0.0, lesser(1.0, x)); }
static inline double rise(double x) { return 1.0 - exp(-x); }

static double radius(const double *p, int age) {
    return lesser(p[CLUMP_RADIUS_MAX], p[CLUMP_RADIUS_1] + p[CLUMP_SPREAD] * (age - 1));
}

static double cover_of(const double *p, double plants, int age) {
    double r = radius(p, age);
    return rise(plants * M_PI * r * r);
}

static double by_age(const double *p, int age, int first) {
    return p[first + (age <= 1 ? 0 : age == 2 ? 1 : 2)];
}

static double ageing(const double *p, int age) {
    double years = age - p[ONSET_AGE];
    if (years <= 0 || p[DECLINE] <= 0) return 1.0;
    double left = p[DECLINE_EXPONENTIAL] >= 0.5 ? pow(1.0 - p[DECLINE], years) : 1.0 - p[DECLINE] * years;
    return greater(p[DECLINE_FLOOR], left);
}

static double density(double decay, double depth) {
    return decay > 0 ? rise(decay * depth) : depth;
}

/* Root weights down to a depth; returns the number of rooted layers. */
static int root_weights(const struct input *in, double depth, double *weight, double *air_weight, double *air_dry) {
    double bottom = 0, sum = 0, deepest = 0;
    int rooted = 0;
    for (int i = 0; i < in->layers; i++) deepest += in->thick[i];
    depth = lesser(depth, deepest);
    for (int i = 0; i < in->layers; i++) {
        double top = bottom;
        bottom += in->thick[i];
        double to = lesser(bottom, depth);
        weight[i] = to > top ? density(in->s[ROOT_DECAY], to) - density(in->s[ROOT_DECAY], top) : 0.0;
        sum += weight[i];
    }
    *air_dry = 0;
    for (int i = 0; i < in->layers; i++) {
        weight[i] /= sum;
        air_weight[i] = weight[i] / (1000.0 * in->thick[i]);
        *air_dry += air_weight[i] * in->sat[i];
        if (weight[i] > 0) rooted = i + 1;
    }
    return rooted;
}

static inline void close_canopy(double *t, double peak, double par, double stressed, double max_lai) {
    t[T_PEAK] = peak * 0.01;
    t[T_PAR] = par;
    t[T_STRESSED] = stressed;
    t[T_MAX_LAI] = max_lai;
}

static void season_loop(const struct input *restrict in, double *restrict totals) {
    const double *restrict p = in->p;
    const double *restrict scalar = in->s;
    const int n = in->layers;
    double water[MAX_LAYERS], per_capacity[MAX_LAYERS], weight[MAX_LAYERS], air_weight[MAX_LAYERS], air_dry;
    double canopy[800];
    for (int i = 0; i < n; i++) {
        water[i] = in->fc[i];
        per_capacity[i] = 1.0 / (in->fc[i] - in->wp[i]);
    }
    int rooted = root_weights(in, p[ROOTS_1], weight, air_weight, &air_dry);
    /* wetness of the topsoil as a weighted sum */
    double topsoil[MAX_LAYERS], topsoil_dry = 0, topsoil_room = 0, top = 0;
    int topsoil_layers = 0;
    for (int i = 0; i < n; i++) {
        double share = within((0.3 - top) / in->thick[i]);
        top += in->thick[i];
        topsoil[i] = share;
        topsoil_dry += share * in->wp[i];
        topsoil_room += share * (in->fc[i] - in->wp[i]);
        if (share > 0) topsoil_layers = i + 1;
    }
    const double cn2 = scalar[CURVE_NUMBER];
    const double cn1 = cn2 / (2.281 - 0.01281 * cn2), cn3 = cn2 / (0.427 + 0.00573 * cn2);
    const double tew = in->fc[0] - 0.5 * in->wp[0], rew = scalar[REW], air_dry_water = 0.5 * in->wp[0];
    const double grams = 1000.0 / p[SPECIFIC_LEAF_AREA];
    const double living = p[LIVING_MOISTURE] / (100.0 - p[LIVING_MOISTURE]);
    const double established = scalar[PLANTS] * p[ESTABLISHMENT_SURVIVAL];
    const double full_growth = p[RUE] * p[CO2_FACTOR] / (1.0 - p[SHARE_3]);
    const int planting_day = (int)scalar[PLANTING_DAY];

    int year = 0, crop_year = -1, phase = BARE, age = (int)scalar[FIRST_AGE], emerged_on = 0;
    int planted = 0, dead = 0, leaf_ended = 0, autumn = 0, emerged = 0;
    double plants = 0, cover = 0, lai_max = 1, lai_new = 0, vigour_of_age = 1, share_below = p[SHARE_3];
    double tt_emergence = 0, tt_leaf = 0, coldest = INFINITY;
    double lai = 0, dead_leaf = 0, stem = 0, reserve = 0, litter = 0, height = 0, height_factor = 0, moisture = 0, airless = 0;
    double sum_rain = 0, sum_et0 = 0, sum_tr = 0, sum_ev = 0, sum_runoff = 0, sum_drain = 0, sum_held = 0;
    double sum_par = 0, sum_wf = 0, stressed = 0, max_lai = 0, peak = 0;
    int window_from = 0, window_to = -1;

    for (int day = 0; day < in->days; day++) {
        int fresh = 0;
        if (day == in->tab[FIRST_DAY][year + 1]) {
            year++;
            fresh = 1;
        }
        if (fresh || day == 0) {
            if (phase == GREEN) {
                dead_leaf += lai * grams;
                lai = 0;
                phase = STANDING;
                coldest = INFINITY;
            }
            age = (int)scalar[FIRST_AGE] + year;
            share_below = by_age(p, age, SHARE_1);
            tt_emergence = tt_leaf = 0;
            leaf_ended = autumn = emerged = 0;
            window_from = in->tab[WINDOW_FROM][year];
            window_to = in->tab[WINDOW_TO][year];
        }
        int whole = (fresh || day == 0) && day == in->tab[FIRST_DAY][year];
        if (!planted && (day == planting_day || (whole && planting_day < day && age >= 1))) {
            planted = 1;
            plants = established;
            cover = cover_of(p, plants, age);
            reserve = age == 1 ? lesser(p[CAPACITY], p[PLANTED_RESERVE] * plants) : p[CAPACITY] * cover;
            coldest = INFINITY;
            tt_emergence = 0;
            rooted = root_weights(in, by_age(p, age, ROOTS_1), weight, air_weight, &air_dry);
        }
        int cut = phase != BARE && crop_year >= 0 && day >= in->tab[CUT_DAY][crop_year];
        int emerges = 0;
        if (planted && !dead && !emerged) {
            tt_emergence += in->col[EMERGENCE_TT][day];
            emerges = tt_emergence >= p[EMERGENCE_SUM];
        }
        if (cut || (emerges && phase != BARE)) {
            double *t = totals + TOTALS * crop_year;
            double above = height > scalar[STUBBLE] ? pow(1.0 - scalar[STUBBLE] / height, 1.5) : 0.0;
            double leaf = lai * grams + dead_leaf;
            double taken = scalar[PICK_UP] * (stem * above + leaf);
            t[T_HARVESTED] = taken * 0.01;
            t[T_MOISTURE] = 100.0 * moisture / (1.0 + moisture);
            close_canopy(t, peak, sum_par, stressed, max_lai);
            litter += stem + leaf - taken;
            if (phase == GREEN) coldest = INFINITY;
            lai = dead_leaf = stem = height = height_factor = 0;
            phase = BARE;
            crop_year = -1;
        }
        if (emerges) {
            if (age > 1) {
                double lt50 = p[age == 2 ? LT50_FIRST : LT50_LATER];
                double survival = 1.0 / (1.0 + exp((lt50 - coldest) / p[KILL_WIDTH]));
                reserve *= survival;
                plants *= survival;
            }
            dead = plants < 0.02 * established;
            if (!dead) {
                double vigour = age <= 1 ? 1.0 : lesser(1.0, reserve / (p[FULL_VIGOUR] * p[CAPACITY] * cover));
                cover = cover_of(p, plants, age);
                double spread = radius(p, age) / radius(p, 3);
                double per_plant = by_age(p, age, SHOOTS_1) * (age >= 3 ? spread * spread : 1.0);
                double shoots = lesser(p[MATURE_SHOOTS], plants * per_plant) * vigour;
                double relative = lesser(1.0, shoots / p[MATURE_SHOOTS]);
                lai_max = p[MAX_LAI] * rise(p[LEAF_SATURATION] * relative) / rise(p[LEAF_SATURATION]);
                lai_new = shoots * p[EMERGING_LEAF];
                vigour_of_age = ageing(p, age);
                double cost = lesser(reserve, lai_new * grams);
                reserve -= cost;
                lai = cost / grams;
                phase = GREEN;
                emerged = 1;
                emerged_on = day;
                crop_year = year;
                rooted = root_weights(in, by_age(p, age, ROOTS_1), weight, air_weight, &air_dry);
                sum_par = sum_wf = stressed = max_lai = peak = 0;
            }
        }

        coldest = lesser(coldest, in->col[RHIZOME][day]);
        int was_green = phase == GREEN;
        if (phase == GREEN) {
            int shortening = in->col[SHORTEN][day] > 0.5;
            double length = in->col[DAY_LENGTH][day], tmin = in->col[TMIN][day];
            leaf_ended |= tt_leaf >= p[LEAF_END_SUM] || (shortening && length < p[LEAF_END_DAY_LENGTH]);
            autumn |= shortening && length < p[SENESCENCE_DAY_LENGTH];
            if (shortening && tmin <= p[KILLING_FROST]) {
                dead_leaf += lai * grams;
                lai = 0;
                phase = STANDING;
                coldest = INFINITY;
            } else if (!shortening) {
                double killed = within((p[SHOOT_LT50] + p[SHOOT_HALF] - tmin) / (2.0 * p[SHOOT_HALF])) * lai;
                lai -= killed;
                dead_leaf += killed * grams;
            }
        }

        double f = lai > 0 && cover > 0 ? cover * rise(p[EXTINCTION] * lai / cover) : 0.0;
        if (day == window_from) {
            sum_rain = sum_et0 = sum_tr = sum_ev = sum_runoff = sum_drain = sum_held = 0;
        }

        double et0 = in->col[ET0][day], liquid = in->col[LIQUID][day];
        double climate = in->col[CLIMATE][day] * height_factor;
        double kcb = lai > 0 && cover > 0 ? cover * (p[FULL_BASAL] + climate) * rise(0.7 * lai / cover) : 0.0;
        double kc_max = greater(1.2 + climate, kcb + 0.05);
        double held = lesser(liquid, lesser(p[INTERCEPTION] * lai, kc_max * et0));
        double et0_left = et0 - held / kc_max;
        double arriving = liquid - held + in->col[MELT][day];
        double runoff = 0;
        if (arriving > 0) {
            double wet = -topsoil_dry;
            for (int i = 0; i < topsoil_layers; i++) wet += topsoil[i] * water[i];
            double wetness = within(wet / topsoil_room);
            double cn = wetness < 0.5 ? cn1 + (cn2 - cn1) * 2.0 * wetness : cn2 + (cn3 - cn2) * (2.0 * wetness - 1.0);
            double retention = 25400.0 / lesser(100.0, cn) - 254.0;
            double excess = arriving - 0.2 * retention;
            if (excess > 0) runoff = excess * excess / (arriving + 0.8 * retention);
        }
        double flow = arriving - runoff;
        for (int i = 0; i < n; i++) {
            double in_layer = water[i] + flow;
            double over = greater(0.0, in_layer - in->sat[i]);
            double gravity = greater(0.0, lesser(in_layer, in->sat[i]) - in->fc[i]);
            flow = over + in->rate[i] * gravity;
            water[i] = in_layer - flow;
        }
        if (flow > scalar[MAX_DRAINAGE]) {
            water[n - 1] += flow - scalar[MAX_DRAINAGE];
            flow = scalar[MAX_DRAINAGE];
            for (int i = n - 1; i > 0; i--) {
                double over = greater(0.0, water[i] - in->sat[i]);
                water[i] -= over;
                water[i - 1] += over;
            }
            double surplus = greater(0.0, water[0] - in->sat[0]);
            water[0] -= surplus;
            runoff += surplus;
        }
        double drainage = flow;

        double lost = greater(0.0, in->fc[0] - water[0]);
        double kr = lost <= rew ? 1.0 : greater(0.0, (tew - lost) / (tew - rew));
        double ke = lesser(kr * (kc_max - kcb), greater(0.01, 1.0 - f) * kc_max);
        double want = ke * et0_left * (1.0 - 0.5 * rise(p[LITTER_COVER] * litter));
        double evaporation = greater(0.0, lesser(want, water[0] - air_dry_water));
        water[0] -= evaporation;

        double demand = kcb * et0_left, transpiration = 0, water_factor = 1, leaf_factor = 1;
        if (demand > 0) {
            double etc = demand + evaporation;
            double slope = 1.0 / (1.0 - greater(0.1, lesser(0.8, p[DEPLETION] + 0.04 * (5.0 - etc))));
            double leaf_slope = 1.0 / (1.0 - greater(0.1, lesser(0.8, p[LEAF_DEPLETION] + 0.04 * (5.0 - etc))));
            double index = 0, leaf_index = 0;
            for (int i = 0; i < rooted; i++) {
                double left = (water[i] - in->wp[i]) * per_capacity[i];
                index += weight[i] * within(left * slope);
                leaf_index += weight[i] * within(left * leaf_slope);
            }
            leaf_factor = lesser(1.0, leaf_index / p[COMPENSATION]);
            if (index > 0) {
                double per_unit = demand / greater(index, p[COMPENSATION]);
                for (int i = 0; i < rooted; i++) {
                    double left = (water[i] - in->wp[i]) * per_capacity[i];
                    double wanted = per_unit * weight[i] * within(left * slope);
                    double taken = greater(0.0, lesser(wanted, water[i] - in->wp[i]));
                    water[i] -= taken;
                    transpiration += taken;
                }
            }
            water_factor = lesser(1.0, transpiration / demand);
        }
        double air = air_dry;
        for (int i = 0; i < rooted; i++) air -= air_weight[i] * water[i];
        air = greater(0.0, air);
        double air_factor = 1.0;
        if (air < p[AIR_LIMIT]) {
            airless += 1.0;
            double onset = p[AIR_DELAY] > 0 ? lesser(1.0, airless / p[AIR_DELAY]) : 1.0;
            air_factor = 1.0 - p[AIR_SENSITIVITY] * (1.0 - air / p[AIR_LIMIT]) * onset;
        } else {
            airless = 0;
        }

        if (phase == GREEN) {
            double theta = in->col[LEAF_TT][day];
            double growth = full_growth * in->col[PAR][day] * f * in->col[WARMTH][day] * lesser(water_factor, air_factor) * vigour_of_age;
            double below = growth * share_below, above = growth - below;
            double drought = p[DROUGHT_ONSET] > 0 ? p[DROUGHT_LOSS] * greater(0.0, 1.0 - water_factor / p[DROUGHT_ONSET]) : 0.0;
            double dying = lai * lesser(1.0, theta / p[LEAF_LIFE] + drought + (autumn ? p[AUTUMN_LOSS] : 0.0));
            double leaf = 0;
            if (!autumn && !leaf_ended) {
                double wanted = grams * p[LEAF_RATE] * theta * greater(lai, lai_new) * greater(0.0, 1.0 - lai / lai_max) * leaf_factor;
                double help = greater(0.0, 1.0 - lai / p[FED_LAI]) * p[MOBILISATION] * reserve;
                leaf = lesser(wanted, p[LEAF_SHARE_MAX] * above + help);
            }
            double paid = lesser(leaf, p[LEAF_SHARE_MAX] * above);
            lai += leaf / grams - dying;
            stem += above - paid;
            reserve += below - (leaf - paid) + p[TRANSLOCATION] * dying * grams;
            dead_leaf += (1.0 - p[TRANSLOCATION]) * dying * grams;
            tt_leaf += theta;
            double taller = p[MAX_HEIGHT] * rise(stem / p[HEIGHT_STEM]);
            if (taller > height) {
                height = taller;
                height_factor = pow(height / 3.0, 0.3);
            }
            if ((autumn || leaf_ended) && lai < 0.1) {
                dead_leaf += lai * grams;
                lai = 0;
                phase = STANDING;
                coldest = INFINITY;
            }
        }
        if (was_green && phase == STANDING) {
            double *t = totals + TOTALS * crop_year;
            int span = day - emerged_on > 1 ? day - emerged_on : 1, first = 0;
            double highest = 0;
            for (int i = 0; i < span; i++) highest = greater(highest, canopy[i]);
            while (first < span - 1 && canopy[first] < 0.9 * highest) first++;
            t[T_FULL_CANOPY] = emerged_on + first;
            t[T_WATER_FACTOR] = lesser(1.0, sum_wf / span);
        }

        double rate = in->col[RATE][day];
        reserve -= lesser(reserve, reserve * p[RESPIRATION] * rate);
        reserve = lesser(reserve, p[CAPACITY] * cover);
        double fallen = dead_leaf * p[LEAF_FALL];
        dead_leaf -= fallen;
        litter += fallen;
        if (phase == STANDING) {
            double broken = stem * (p[STEM_LOSS] + (in->col[SNOW][day] > 10.0 ? p[SNOW_LOSS] : 0.0));
            stem -= broken;
            litter += broken;
            double balance = in->col[EQUILIBRIUM][day];
            moisture = lesser(living, moisture + in->col[DRYING][day] * (balance - moisture) + p[REWETTING] * lesser(10.0, liquid));
        } else {
            moisture = living;
        }
        litter -= lesser(litter, litter * p[LITTER_DECAY] * rate);

        if (day >= window_from && day <= window_to) {
            sum_rain += in->col[RAIN][day];
            sum_et0 += et0;
            sum_tr += transpiration;
            sum_ev += evaporation;
            sum_runoff += runoff;
            sum_drain += drainage;
            sum_held += held;
            if (day == window_to) {
                double *t = totals + TOTALS * year;
                t[T_RAIN] = sum_rain;
                t[T_ET0] = sum_et0;
                t[T_TRANSPIRATION] = sum_tr;
                t[T_EVAPORATION] = sum_ev;
                t[T_RUNOFF] = sum_runoff;
                t[T_DRAINAGE] = sum_drain;
                t[T_HELD] = sum_held;
            }
        }
        if (crop_year >= 0) {
            peak = greater(peak, lai * grams + dead_leaf + stem);
            if (phase == GREEN) {
                if (day - emerged_on < 800) canopy[day - emerged_on] = f;
                sum_par += in->col[PAR][day] * f;
                sum_wf += water_factor;
                stressed += water_factor < 0.9 ? 1.0 : 0.0;
                max_lai = greater(max_lai, lai);
            }
        }
    }
    if (crop_year >= 0) close_canopy(totals + TOTALS * crop_year, peak, sum_par, stressed, max_lai);
}

static void *take(const char **from, size_t bytes) {
    void *copy = malloc(bytes);
    memcpy(copy, *from, bytes);
    *from += bytes;
    return copy;
}

static double now(void) {
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return 1e9 * t.tv_sec + t.tv_nsec;
}

int main(int count, char **argument) {
    if (count != 4) return 2;
    FILE *file = fopen(argument[1], "rb");
    if (!file) return 1;
    fseek(file, 0, SEEK_END);
    size_t size = ftell(file);
    rewind(file);
    char *all = malloc(size);
    if (fread(all, 1, size, file) != size) return 1;
    fclose(file);
    const char *at = all;
    struct input in;
    memset(&in, 0, sizeof in);
    int32_t *counts = take(&at, 5 * sizeof(int32_t));
    in.days = counts[0];
    in.years = counts[1];
    in.layers = counts[2];
    if (in.layers > MAX_LAYERS || counts[3] != PARAMETERS || counts[4] != COLUMNS) return 3;
    memcpy(in.p, take(&at, sizeof in.p), sizeof in.p);
    memcpy(in.s, take(&at, sizeof in.s), sizeof in.s);
    size_t layer = in.layers * sizeof(double);
    memcpy(in.thick, take(&at, layer), layer);
    memcpy(in.wp, take(&at, layer), layer);
    memcpy(in.fc, take(&at, layer), layer);
    memcpy(in.sat, take(&at, layer), layer);
    memcpy(in.rate, take(&at, layer), layer);
    for (int c = 0; c < COLUMNS; c++) in.col[c] = take(&at, in.days * sizeof(double));
    for (int t = 0; t < TABLES; t++) in.tab[t] = take(&at, (in.years + 1) * sizeof(int32_t));

    size_t bytes = (size_t)in.years * TOTALS * sizeof(double);
    double *totals = malloc(bytes);
    double shortest = INFINITY;
    for (int repeat = 0; repeat < atoi(argument[3]); repeat++) {
        for (size_t i = 0; i < bytes / sizeof(double); i++) totals[i] = NAN;
        double start = now();
        season_loop(&in, totals);
        shortest = lesser(shortest, now() - start);
    }
    file = fopen(argument[2], "wb");
    if (!file || fwrite(totals, 1, bytes, file) != bytes) return 1;
    fclose(file);
    printf("%.0f\n", shortest);
    return 0;
}
