package org.thirstline.calibration.years;

import org.thirstline.io.study.Study;
import org.thirstline.io.study.Zone;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.soil.Irrigation;

/** Zones of a study with one thing changed. */
final class StudyFields {

    private StudyFields() {}

    static FieldConditions irrigated(Study study, Zone zone, Irrigation irrigation) {
        return study.field(zone).withIrrigation(irrigation);
    }

    static FieldConditions harvested(Study study, Zone zone, HarvestRule harvest) {
        return study.field(zone).withHarvest(harvest);
    }
}
