package org.thirstline.validation.catalogue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.thirstline.validation.age.StandAgeFamily;
import org.thirstline.validation.observed.ObservedWorld;
import org.thirstline.validation.published.PublishedFamilies;

/** Every family of the page. */
public final class AllFamilies {

    private AllFamilies() {}

    private static Map<String, Supplier<Family>> makers() {
        Map<String, Supplier<Family>> makers = new LinkedHashMap<>(PublishedFamilies.makers());
        makers.put(StandAgeFamily.SLUG, StandAgeFamily::calculate);
        return makers;
    }

    /** Calculates every family; those that need real files come from the results kept. */
    public static List<Family> calculate() throws IOException {
        List<Family> families = new ArrayList<>();
        makers().values().forEach(maker -> families.add(maker.get()));
        families.addAll(ObservedWorld.families());
        return families;
    }

    /** Returns how many numbers of a family that needs no real files pass, whatever the code is that calculates them. */
    public static long passes(String slug) {
        return makers().get(slug).get().count(Verdict.PASS);
    }
}
