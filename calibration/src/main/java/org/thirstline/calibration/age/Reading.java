package org.thirstline.calibration.age;

/** Ways to read the same trial. A decline is called only if it stands in every reading, because a drought that was simulated imperfectly looks like age. */
public enum Reading {
    /** Simulated weather as it is. */
    FACE_VALUE("at face value"),
    /** The stand may respond to simulated weather more or less strongly than simulated. */
    RESCALED_WEATHER("with the weather effect rescaled"),
    /** Years simulated under 80 % of the planting's median are left out: there the simulation errs most. */
    WITHOUT_POOR_YEARS("without poor years");

    private final String words;

    Reading(String words) {
        this.words = words;
    }

    /** Returns the words for reports. */
    public String words() {
        return words;
    }
}
