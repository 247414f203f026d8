package org.thirstline.model.climate;

/** How wet a season was among the seasons it is compared with. */
public enum SeasonClass {
    /** Under the lower tercile. */
    DRY("dry"),
    /** Between the terciles. */
    MIDDLE("middle"),
    /** Over the upper tercile. */
    WET("wet");

    private final String word;

    SeasonClass(String word) {
        this.word = word;
    }

    /** Returns the word for tables and charts. */
    public String word() {
        return word;
    }
}
