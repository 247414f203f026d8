package org.thirstline.model.engine;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.time.LocalDate;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.thirstline.model.weather.DailyDrivers;

/** The day loop allocates nothing. */
class AllocationTest {

    private static final LocalDate START = LocalDate.of(1991, 1, 1);

    @Test
    void thirtyYearsOfDaysAllocateNoBytes() {
        DailyDrivers drivers = DailyDrivers.of(
                TestFields.NORTH, TestFields.randomWeather(TestFields.NORTH, START, 30 * 365 + 7, new Random(1)));
        FieldConditions field = TestFields.field(TestFields.grass(), TestFields.loam(1.2), START);
        CropWeather weather = new CropWeather(drivers, field.crop());
        YearTable table = new YearTable(drivers.site(), drivers.weather(), field.season(), field.harvest());
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long bytes = Long.MAX_VALUE;
        for (int run = 0; run < 5; run++) {
            StandSimulation simulation = new StandSimulation(drivers, weather, field, table, Scenario.ACTUAL);
            long before = threads.getCurrentThreadAllocatedBytes();
            simulation.run();
            bytes = Math.min(bytes, threads.getCurrentThreadAllocatedBytes() - before);
        }
        assertThat(bytes).isZero();
    }
}
