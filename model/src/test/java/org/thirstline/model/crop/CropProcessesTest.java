package org.thirstline.model.crop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.util.EnumMap;
import java.util.Map;
import java.util.Properties;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.thirstline.model.error.InputException;

class CropProcessesTest {

    private static final CropParameters GRASS = grass();

    private static CropParameters grass() {
        Properties file = new Properties();
        try (InputStream in =
                CropProcessesTest.class.getResourceAsStream("/org/thirstline/model/engine/test-grass.properties")) {
            file.load(in);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        Map<CropParameter, Double> values = new EnumMap<>(CropParameter.class);
        for (CropParameter parameter : CropParameter.values()) {
            values.put(parameter, Double.valueOf(file.getProperty(parameter.key())));
        }
        return CropParameters.of("test grass", values);
    }

    /** Thermal time by its definition: the mean over the day of what a sine curve has between base and upper threshold. */
    @Test
    void thermalTimeIsTheAreaUnderTheSine() {
        Random random = new Random(4);
        for (int i = 0; i < 200; i++) {
            double tmin = -10.0 + 30.0 * random.nextDouble();
            double tmax = tmin + 20.0 * random.nextDouble();
            int steps = 20_000;
            double sum = 0.0;
            for (int step = 0; step < steps; step++) {
                double t = 0.5 * (tmin + tmax) + 0.5 * (tmax - tmin) * Math.sin(2.0 * Math.PI * (step + 0.5) / steps);
                sum += Math.max(0.0, Math.min(30.0, t) - 9.0);
            }
            assertThat(ThermalTime.singleSine(tmin, tmax, 9.0, 30.0)).isCloseTo(sum / steps, within(1e-3));
        }
    }

    @Test
    void springFrostKillsAlongARamp() {
        FrostDamage frost = new FrostDamage(GRASS);
        assertThat(frost.leafKilled(-2.9)).isZero();
        assertThat(frost.leafKilled(-5.5)).isCloseTo(0.5, within(1e-12));
        assertThat(frost.leafKilled(-8.1)).isEqualTo(1.0);
        assertThat(frost.endsCanopy(-2.0)).isTrue();
        assertThat(frost.endsCanopy(-1.9)).isFalse();
    }

    @Test
    void halfTheYoungPlantsDieAtTheirLethalTemperature() {
        FrostDamage frost = new FrostDamage(GRASS);
        assertThat(frost.winterSurvival(-3.4, true)).isCloseTo(0.5, within(1e-12));
        assertThat(frost.winterSurvival(-3.4, false)).isGreaterThan(0.99);
        assertThat(frost.winterSurvival(-6.5, false)).isCloseTo(0.5, within(1e-12));
        assertThat(frost.winterSurvival(Double.POSITIVE_INFINITY, true)).isEqualTo(1.0);
    }

    @Test
    void shootsSaturateAndLeafAreaWithThem() {
        StandStructure stand = new StandStructure(GRASS);
        double plants = stand.established(1.72);
        assertThat(stand.shoots(plants, 1, 1.0)).isCloseTo(7.0 * plants, within(1e-9));
        assertThat(stand.shoots(plants, 2, 1.0)).isCloseTo(30.0 * plants, within(1e-9));
        assertThat(stand.shoots(plants, 8, 1.0)).isEqualTo(65.0);
        assertThat(stand.shoots(plants, 8, 0.5)).isEqualTo(32.5);
        assertThat(stand.largestLeafAreaIndex(65.0)).isCloseTo(6.5, within(1e-9));
        double half = stand.largestLeafAreaIndex(32.5);
        assertThat(half).isBetween(0.5 * 6.5, 6.5);
        assertThat(stand.groundCover(plants, 1)).isLessThan(stand.groundCover(plants, 3));
        assertThat(stand.groundCover(0.05, 15)).as("gaps stay for years").isLessThan(0.3);
    }

    @Test
    void declineFollowsItsShapeToItsFloor() {
        CropParameters steady = GRASS;
        assertThat(new StandStructure(steady).ageFactor(30)).isEqualTo(1.0);
        CropParameters falling = GRASS.with(CropParameter.DECLINE_PER_YEAR, 0.05);
        assertThat(new StandStructure(falling).ageFactor(10)).isEqualTo(1.0);
        assertThat(new StandStructure(falling).ageFactor(12)).isCloseTo(0.95 * 0.95, within(1e-12));
        CropParameters linear = falling.with(CropParameter.DECLINE_EXPONENTIAL, 0.0);
        assertThat(new StandStructure(linear).ageFactor(12)).isCloseTo(0.90, within(1e-12));
        assertThat(new StandStructure(linear).ageFactor(90)).isEqualTo(0.5);
    }

    @Test
    void lightFollowsBeerLambertUnderClumps() {
        LightInterception light = new LightInterception(0.6);
        assertThat(light.fraction(3.0, 1.0)).isCloseTo(1.0 - Math.exp(-1.8), within(1e-12));
        assertThat(light.fraction(3.0, 0.4)).isLessThan(0.4).isGreaterThan(0.39);
        assertThat(light.fraction(0.0, 1.0)).isZero();
        assertThat(light.fraction(3.0, 0.0)).isZero();
    }

    @Test
    void growthStopsInColdAndHeat() {
        BiomassGrowth growth = new BiomassGrowth(GRASS, 400.0);
        assertThat(growth.temperatureFactor(6.0)).isZero();
        assertThat(growth.temperatureFactor(13.0)).isCloseTo(0.5, within(1e-12));
        assertThat(growth.temperatureFactor(25.0)).isEqualTo(1.0);
        assertThat(growth.temperatureFactor(37.0)).isCloseTo(0.5, within(1e-12));
        assertThat(growth.temperatureFactor(45.0)).isZero();
        double total = growth.total(10.0, 1.0, 1.0, 1.0);
        assertThat(total * (1.0 - growth.rhizomeShare(5))).isCloseTo(32.0, within(1e-9));
    }

    @Test
    void carbonDioxideHelpsOnlyWhereTheCropFileSaysSo() {
        assertThat(new BiomassGrowth(GRASS, 600.0).total(1, 1, 1, 1))
                .isEqualTo(new BiomassGrowth(GRASS, 400.0).total(1, 1, 1, 1));
        CropParameters responsive = GRASS.with(CropParameter.CO2_RESPONSE, 0.05);
        assertThat(new BiomassGrowth(responsive, 600.0).total(1, 1, 1, 1))
                .isCloseTo(1.1 * new BiomassGrowth(responsive, 400.0).total(1, 1, 1, 1), within(1e-12));
    }

    @Test
    void moistureConvertsBetweenItsBases() {
        assertThat(DryDown.wetBasisPct(DryDown.dryBasis(20.0))).isCloseTo(20.0, within(1e-12));
        assertThat(DryDown.dryBasis(50.0)).isEqualTo(1.0);
    }

    @Test
    void stemsDryTowardsTheAirAndAreWettedByRain() {
        DryDown dryDown = new DryDown(GRASS);
        double moist = dryDown.living();
        for (int day = 0; day < 200; day++) {
            moist = dryDown.tomorrow(moist, 0.15, dryDown.approach(2.0), 0.0);
        }
        assertThat(moist).isCloseTo(0.15, within(0.01));
        assertThat(dryDown.tomorrow(moist, 0.15, dryDown.approach(2.0), 8.0))
                .isGreaterThan(dryDown.tomorrow(moist, 0.15, dryDown.approach(2.0), 0.0));
        assertThat(dryDown.tomorrow(1.0, 0.15, dryDown.approach(4.0), 0.0))
                .isLessThan(dryDown.tomorrow(1.0, 0.15, dryDown.approach(1.0), 0.0));
        assertThat(DryDown.equilibrium(10.0, 90.0)).isGreaterThan(DryDown.equilibrium(10.0, 60.0));
    }

    @Test
    void stubbleHoldsMoreThanItsShareOfHeight() {
        Cut cut = new Cut(0.3, 1.0);
        double left = 1000.0 - cut.harvested(1000.0, 0.0, 3.0);
        assertThat(left).isBetween(100.0, 200.0);
        assertThat(new Cut(0.3, 0.8).harvested(1000.0, 100.0, 0.2)).isEqualTo(80.0);
        assertThat(new Cut(0.0, 0.8).harvested(1000.0, 100.0, 3.0)).isCloseTo(880.0, within(1e-9));
    }

    @Test
    void theReserveFeedsRespiresAndLimitsShoots() {
        RhizomeReserve reserve = new RhizomeReserve(GRASS);
        assertThat(reserve.vigour(900.0, 5, 1.0)).isEqualTo(1.0);
        assertThat(reserve.vigour(450.0, 5, 1.0)).isCloseTo(0.5, within(1e-12));
        assertThat(reserve.vigour(450.0, 5, 0.5)).isEqualTo(1.0);
        assertThat(reserve.vigour(1.0, 1, 1.0)).isEqualTo(1.0);
        assertThat(reserve.respired(500.0, RhizomeReserve.factorOfTemperature(20.0)))
                .isCloseTo(2.0 * reserve.respired(500.0, RhizomeReserve.factorOfTemperature(10.0)), within(1e-12));
        assertThat(reserve.planted(1.3)).isCloseTo(52.0, within(1e-12));
    }

    @Test
    void droughtAgeAndAutumnTakeLeaf() {
        CanopyGrowth canopy = new CanopyGrowth(GRASS);
        assertThat(canopy.dyingShare(0.0, 1.0, false)).isZero();
        assertThat(canopy.dyingShare(12.0, 1.0, false)).isCloseTo(12.0 / 600.0, within(1e-12));
        assertThat(canopy.dyingShare(0.0, 0.0, false)).isCloseTo(0.03, within(1e-12));
        assertThat(canopy.dyingShare(0.0, 1.0, true)).isCloseTo(0.04, within(1e-12));
        assertThat(canopy.potentialIncrease(6.5, 0.1, 6.5, 10.0, 1.0)).isZero();
        assertThat(canopy.potentialIncrease(0.0, 0.1, 6.5, 10.0, 1.0)).isGreaterThan(0.0);
    }

    @Test
    void frozenSoilUnderSnowStaysMild() {
        double bare = 0.0;
        double snowy = 0.0;
        for (int day = 0; day < 30; day++) {
            bare = RhizomeZone.temperature(bare, -15.0, 0.0);
            snowy = RhizomeZone.temperature(snowy, -15.0, 60.0);
        }
        assertThat(bare).isBetween(-4.0, -3.0);
        assertThat(snowy).isGreaterThan(-0.6);
    }

    @Test
    void parametersOutsideTheirLimitsOrOrderAreRefused() {
        assertThatThrownBy(() -> GRASS.with(CropParameter.EXTINCTION_COEFFICIENT, 3.0))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("extinction_coefficient");
        assertThatThrownBy(() -> GRASS.with(CropParameter.GROWTH_OPTIMUM_LOW, 35.0))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("growth_optimum_low_c");
    }

    @Test
    void snowBreaksStems() {
        WinterLosses losses = new WinterLosses(GRASS);
        assertThat(losses.stemLossShare(30.0)).isGreaterThan(losses.stemLossShare(0.0));
        assertThat(losses.leafFallShare()).isEqualTo(GRASS.get(CropParameter.DEAD_LEAF_FALL));
    }

    /** Simard's three pieces at 20 °C (68 °F), reckoned by hand, and which piece holds at 10 and 50 %. */
    @Test
    void equilibriumMoistureOfDeadStems() {
        assertThat(DryDown.equilibrium(20.0, 5.0)).isCloseTo(0.01241135, within(1e-9));
        assertThat(DryDown.equilibrium(20.0, 10.0)).isCloseTo(0.02823248, within(1e-9));
        assertThat(DryDown.equilibrium(20.0, 30.0)).isCloseTo(0.06025388, within(1e-9));
        assertThat(DryDown.equilibrium(20.0, 50.0)).isCloseTo(0.0962315, within(1e-9));
        assertThat(DryDown.equilibrium(20.0, 80.0)).isCloseTo(0.1611668, within(1e-9));
        assertThat(DryDown.equilibrium(20.0, 120.0)).isEqualTo(DryDown.equilibrium(20.0, 100.0));
        assertThat(DryDown.equilibrium(20.0, 0.0)).isEqualTo(0.01);
        assertThat(new DryDown(GRASS).living()).isEqualTo(DryDown.dryBasis(GRASS.get(CropParameter.LIVING_MOISTURE)));
    }

    @Test
    void growthIsTheProductOfItsFactors() {
        BiomassGrowth growth = new BiomassGrowth(GRASS, GRASS.get(CropParameter.CO2_REFERENCE));
        double whole = growth.total(10.0, 1.0, 1.0, 1.0);
        assertThat(whole)
                .isCloseTo(
                        10.0
                                * GRASS.get(CropParameter.RADIATION_USE_EFFICIENCY)
                                / (1.0 - GRASS.get(CropParameter.RHIZOME_SHARE_MATURE)),
                        within(1e-9));
        assertThat(growth.total(5.0, 0.5, 0.8, 0.9)).isCloseTo(0.18 * whole, within(1e-9));
        assertThat(BiomassGrowth.daytimeTemperature(10.0, 30.0)).isCloseTo(25.0, within(1e-12));
        assertThat(growth.par(20.0)).isCloseTo(20.0 * GRASS.get(CropParameter.PAR_FRACTION), within(1e-12));
        assertThat(growth.rhizomeShare(1)).isEqualTo(GRASS.get(CropParameter.RHIZOME_SHARE_YEAR_1));
        assertThat(growth.rhizomeShare(2)).isEqualTo(GRASS.get(CropParameter.RHIZOME_SHARE_YEAR_2));
        assertThat(growth.rhizomeShare(3)).isEqualTo(GRASS.get(CropParameter.RHIZOME_SHARE_MATURE));
    }

    @Test
    void leafAreaGrowsInProportionToWhatIsThereAndToTheRoomLeft() {
        CanopyGrowth canopy = new CanopyGrowth(GRASS);
        double rate = GRASS.get(CropParameter.LEAF_GROWTH_RATE);
        assertThat(canopy.potentialIncrease(2.0, 0.1, 8.0, 12.0, 0.5))
                .isCloseTo(rate * 12.0 * 2.0 * 0.75 * 0.5, within(1e-12));
        assertThat(canopy.potentialIncrease(0.0, 0.1, 8.0, 12.0, 1.0)).isCloseTo(rate * 12.0 * 0.1, within(1e-12));
        assertThat(canopy.potentialIncrease(9.0, 0.1, 8.0, 12.0, 1.0)).isZero();
        assertThat(canopy.gramsPerLeafArea())
                .isCloseTo(1000.0 / GRASS.get(CropParameter.SPECIFIC_LEAF_AREA), within(1e-12));
        assertThat(canopy.emergingLeafAreaIndex(50.0))
                .isCloseTo(50.0 * GRASS.get(CropParameter.EMERGING_LEAF_AREA), within(1e-12));
    }

    @Test
    void rootsDeepenAndClumpsSpreadByAge() {
        StandStructure structure = new StandStructure(GRASS);
        assertThat(structure.rootDepthM(1)).isEqualTo(GRASS.get(CropParameter.ROOT_DEPTH_YEAR_1));
        assertThat(structure.rootDepthM(2)).isEqualTo(GRASS.get(CropParameter.ROOT_DEPTH_YEAR_2));
        assertThat(structure.rootDepthM(3)).isEqualTo(GRASS.get(CropParameter.ROOT_DEPTH_MATURE));
        double radius = GRASS.get(CropParameter.CLUMP_RADIUS_YEAR_1);
        assertThat(structure.groundCover(2.0, 1))
                .isCloseTo(1.0 - Math.exp(-2.0 * Math.PI * radius * radius), within(1e-12));
    }
}
