package org.thirstline.model.engine;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.error.InputException;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonStatus;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.weather.DailyDrivers;

/** Many runs over one weather give what single runs give, whatever was run before. */
class SeasonRunsTest {

    private static final LocalDate START = LocalDate.of(1991, 1, 1);

    private final DailyDrivers drivers = DailyDrivers.of(
            TestFields.NORTH, TestFields.randomWeather(TestFields.NORTH, START, 9 * 365, new Random(5)));
    private final FieldConditions field = TestFields.field(TestFields.grass(), TestFields.loam(0.8), START);

    private FieldConditions with(CropParameters crop) {
        return TestFields.field(crop, TestFields.loam(0.8), START);
    }

    private static List<List<Double>> values(List<SeasonRecord> seasons) {
        return seasons.stream()
                .map(season -> List.of(SeasonVariable.values()).stream()
                        .map(season::value)
                        .toList())
                .toList();
    }

    @ParameterizedTest
    @EnumSource(CropParameter.class)
    void sharedColumnsNeverOutliveTheParametersTheyCameFrom(CropParameter parameter) {
        SeasonRuns runs = new SeasonRuns(drivers, field, 400);
        List<List<Double>> before = values(runs.simulate(field));
        CropParameters changed = field.crop();
        try {
            changed = changed.with(parameter, 0.93 * changed.get(parameter));
        } catch (InputException outsideTheLimits) {
            changed = changed.with(parameter, Math.min(parameter.highest(), 1.05 * changed.get(parameter) + 1e-3));
        }

        assertThat(values(runs.simulate(with(changed))))
                .isEqualTo(values(PairedRuns.simulateActual(drivers, with(changed), 400)));
        assertThat(values(runs.simulate(field))).isEqualTo(before);
    }

    @Test
    void aRepeatedRunWritesTheSameResultAndNoOtherBytes() {
        SeasonRun run = new SeasonRuns(drivers, field, 400).prepare(field);
        List<SeasonRecord> once = PairedRuns.simulateActual(drivers, field, 400);
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long bytes = Long.MAX_VALUE;
        for (int repeat = 0; repeat < 5; repeat++) {
            long before = threads.getCurrentThreadAllocatedBytes();
            run.run();
            bytes = Math.min(bytes, threads.getCurrentThreadAllocatedBytes() - before);
        }

        assertThat(bytes).isZero();
        for (SeasonRecord season : once) {
            assertThat(run.status(season.growthYear())).isEqualTo(season.status());
            for (SeasonVariable variable : SeasonVariable.values()) {
                assertThat(Double.valueOf(run.value(season.growthYear(), variable)))
                        .as("%s of %d", variable, season.growthYear())
                        .isEqualTo(Double.valueOf(season.value(variable)));
            }
        }
        assertThat(once).anyMatch(season -> season.status() == SeasonStatus.COMPLETE);
        assertThat(run.years()).isEqualTo(9);
        assertThat(run.firstYear()).isEqualTo(1991);
    }
}
