package org.thirstline.io.weather;

import org.thirstline.model.units.Units;

/** Units of weather files and how each turns into ours: (value + shift) × numerator / denominator. */
enum DailyUnit {
    SAME(0.0, 1.0, 1.0),
    /** Ten of the file's are one of ours. */
    TENTH(0.0, 1.0, 10.0),
    /** A share of one, ours is percent. */
    FRACTION(0.0, 100.0, 1.0),
    FAHRENHEIT(-32.0, 5.0, 9.0),
    KELVIN(-273.15, 1.0, 1.0),
    CENTIMETRE(0.0, 10.0, 1.0),
    INCH(0.0, Units.MM_PER_INCH, 1.0),
    /** Mean over 24 h [W m⁻²], 86 400 s a day. */
    WATT_PER_M2(0.0, 0.0864, 1.0),
    JOULE_PER_CM2(0.0, 1.0, 100.0),
    /** Thermochemical calorie, 4.184 J. */
    CALORIE_PER_CM2(0.0, 0.04184, 1.0),
    KILOWATT_HOUR_PER_M2(0.0, 3.6, 1.0),
    KM_PER_HOUR(0.0, 1.0, 3.6),
    KM_PER_DAY(0.0, 1.0, 86.4),
    /** International mile, 1609.344 m. */
    MILE_PER_HOUR(0.0, 0.44704, 1.0),
    /** 1852 m in an hour. */
    KNOT(0.0, 1852.0, 3600.0),
    HECTOPASCAL(0.0, 1.0, 10.0),
    PASCAL(0.0, 1.0, 1000.0),
    GRAM_PER_KG(0.0, 1.0, 1000.0),
    SECONDS(0.0, 1.0, 3600.0),
    MINUTES(0.0, 1.0, 60.0);

    private final double shift;
    private final double numerator;
    private final double denominator;

    DailyUnit(double shift, double numerator, double denominator) {
        this.shift = shift;
        this.numerator = numerator;
        this.denominator = denominator;
    }

    /** Returns a value in our unit. */
    double convert(double value) {
        return (value + shift) * numerator / denominator;
    }
}
