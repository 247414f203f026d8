package org.thirstline.calibration.years;

import org.thirstline.io.study.Management;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.Zone;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.soil.Irrigation;

/** Zones of a study with one thing changed. */
final class StudyFields {

    private StudyFields() {}

    static FieldConditions irrigated(Study study, Zone zone, Irrigation irrigation) {
        return with(study, zone, study.management().harvest(), irrigation);
    }

    static FieldConditions harvested(Study study, Zone zone, HarvestRule harvest) {
        return with(study, zone, harvest, study.management().irrigation());
    }

    private static FieldConditions with(Study study, Zone zone, HarvestRule harvest, Irrigation irrigation) {
        Management management = study.management();
        return new FieldConditions(
                study.crop().parameters(),
                study.stand(),
                zone.soil(),
                harvest,
                management.stubbleM(),
                management.pickUpShare(),
                irrigation,
                study.season(),
                management.co2Ppm());
    }
}
