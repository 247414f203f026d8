package org.thirstline.model.soil;

import org.thirstline.model.units.Bound;
import org.thirstline.model.units.Rise;

/** Litter on the ground: its cover spares evaporation, and it decays. Immutable and thread-safe. */
public final class Litter {

    private final double coverPerGram;
    private final double decayPerDay;

    /**
     * Creates the process.
     *
     * @param coverPerGram ground covered per mass A [m² g⁻¹]: cover = 1 - exp(-A m) (Gregory 1982, Trans. ASAE 25:1333, from memory)
     * @param decayPerDay share decayed a day at 10 °C [d⁻¹]
     */
    public Litter(double coverPerGram, double decayPerDay) {
        this.coverPerGram = coverPerGram;
        this.decayPerDay = decayPerDay;
    }

    /**
     * Share of the ground under litter.
     *
     * @param massGM2 [g m⁻²]
     */
    public double cover(double massGM2) {
        return Rise.of(coverPerGram * massGM2);
    }

    /**
     * Litter decayed in a day.
     *
     * @param massGM2 [g m⁻²]
     * @param temperatureFactor rate relative to 10 °C
     * @return [g m⁻² d⁻¹]
     */
    public double decayed(double massGM2, double temperatureFactor) {
        return Bound.atMost(massGM2 * decayPerDay * temperatureFactor, massGM2);
    }
}
