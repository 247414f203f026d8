package org.thirstline.charts.theme;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PaletteTest {

    /** Well over ten times the just noticeable difference of about 2.3 (Mahy, Van Eycken and Oosterlinck 1994). */
    private static final double TOLD_APART = 25.0;

    /** Ten grey steps of lightness: told apart side by side in grey print (our choice). */
    private static final double GREY_APART = 12.0;

    /** A difference of one is about the least that is seen; twelve is seen at a glance (our choice). */
    private static final double A_DOZEN = 12.0;

    private static final double AA_TEXT = 4.5;
    private static final double AA_GRAPHICS = 3.0;

    @Test
    void distanceIsThatOfTheCie() {
        assertThat(ColourVision.NORMAL.distance(Color.BLACK, Color.WHITE)).isCloseTo(100.0, within(0.01));
        assertThat(ColourVision.contrast(Color.BLACK, Color.WHITE)).isCloseTo(21.0, within(1e-9));
        // Pure red and green confused: nearer to each other for a deuteranope than for the normal eye.
        assertThat(ColourVision.DEUTERANOPIA.distance(new Color(0xD05030), new Color(0x708020)))
                .isLessThan(0.5 * ColourVision.NORMAL.distance(new Color(0xD05030), new Color(0x708020)));
    }

    @ParameterizedTest
    @EnumSource(ChartTheme.class)
    void seasonsAreToldApartByEveryEye(ChartTheme theme) {
        Palette palette = theme.palette();
        List<Color> seasons = List.of(palette.dry(), palette.middle(), palette.wet());
        for (ColourVision eye : ColourVision.values()) {
            for (int i = 0; i < seasons.size(); i++) {
                for (int j = i + 1; j < seasons.size(); j++) {
                    assertThat(eye.distance(seasons.get(i), seasons.get(j)))
                            .as("%s, %s, seasons %d and %d", theme, eye, i, j)
                            .isGreaterThan(TOLD_APART);
                    assertThat(Math.abs(
                                    ColourVision.lightness(seasons.get(i)) - ColourVision.lightness(seasons.get(j))))
                            .as("%s in grey, seasons %d and %d", theme, i, j)
                            .isGreaterThan(GREY_APART);
                }
            }
        }
    }

    /** Pairs 1, 17, 18 and 7 of the test data of Sharma, Wu and Dalal (2005), from memory; half of the last printed digit. */
    @Test
    void differenceIsThatPublished() {
        double[][][] pairs = {
            {{50.0, 2.6772, -79.7751}, {50.0, 0.0, -82.7485}, {2.0425}},
            {{50.0, 2.5, 0.0}, {73.0, 25.0, -18.0}, {27.1492}},
            {{50.0, 2.5, 0.0}, {56.0, -27.0, -3.0}, {31.9030}},
            {{50.0, -1.0, 2.0}, {50.0, 0.0, 0.0}, {2.3669}}
        };
        for (double[][] pair : pairs) {
            assertThat(ColourDifference.between(pair[0], pair[1])).isCloseTo(pair[2][0], within(0.5e-4));
        }
    }

    @ParameterizedTest
    @EnumSource(ChartTheme.class)
    void everyMeaningIsToldApartByEveryEyeInCiede2000Too(ChartTheme theme) {
        Palette palette = theme.palette();
        List<Color> meanings = List.of(palette.dry(), palette.middle(), palette.wet(), palette.crop());
        for (ColourVision eye : ColourVision.values()) {
            for (int i = 0; i < meanings.size(); i++) {
                for (int j = i + 1; j < meanings.size(); j++) {
                    assertThat(eye.difference(meanings.get(i), meanings.get(j)))
                            .as("%s, %s, colours %d and %d", theme, eye, i, j)
                            .isGreaterThan(A_DOZEN);
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource(ChartTheme.class)
    void cropIsNeverTakenForDroughtOrWater(ChartTheme theme) {
        Palette palette = theme.palette();
        for (ColourVision eye : ColourVision.values()) {
            assertThat(eye.distance(palette.crop(), palette.dry()))
                    .as("%s", eye)
                    .isGreaterThan(TOLD_APART);
            assertThat(eye.distance(palette.crop(), palette.wet()))
                    .as("%s", eye)
                    .isGreaterThan(TOLD_APART);
        }
    }

    @ParameterizedTest
    @EnumSource(ChartTheme.class)
    void textAndMarksStandOut(ChartTheme theme) {
        Palette palette = theme.palette();
        Color background = palette.background();
        for (Color text : List.of(palette.ink(), palette.muted())) {
            for (Color under : List.of(background, palette.stress(), palette.wideBand())) {
                assertThat(ColourVision.contrast(text, under)).isGreaterThan(AA_TEXT);
            }
        }
        for (Color mark : List.of(palette.dry(), palette.middle(), palette.wet(), palette.crop())) {
            assertThat(ColourVision.contrast(mark, background)).isGreaterThan(AA_GRAPHICS);
        }
    }

    @ParameterizedTest
    @EnumSource(ChartTheme.class)
    void soilWaterIsAScaleInGreyAndForEveryEye(ChartTheme theme) {
        List<Color> soil = theme.palette().soil();
        double direction =
                Math.signum(ColourVision.lightness(soil.get(soil.size() - 1)) - ColourVision.lightness(soil.get(0)));
        for (int step = 1; step < soil.size(); step++) {
            double change = ColourVision.lightness(soil.get(step)) - ColourVision.lightness(soil.get(step - 1));
            assertThat(direction * change).as("%s, step %d", theme, step).isGreaterThan(2.0);
            for (ColourVision eye : ColourVision.values()) {
                assertThat(eye.distance(soil.get(step), soil.get(step - 1))).isGreaterThan(4.0);
            }
        }
    }

    @Test
    void everyColourHasOneMeaning() {
        for (ChartTheme theme : ChartTheme.values()) {
            assertThat(theme.palette().all()).doesNotHaveDuplicates();
        }
        assertThat(ChartTheme.DARK.palette().all())
                .hasSameSizeAs(ChartTheme.LIGHT.palette().all());
    }

    @Test
    void soilStepsCoverTheScale() {
        Palette palette = ChartTheme.LIGHT.palette();

        assertThat(palette.soilStep(-0.3)).isZero();
        assertThat(palette.soilStep(0.0)).isZero();
        assertThat(palette.soilStep(1.0)).isEqualTo(palette.soil().size() - 1);
        assertThat(palette.soilStep(1.7)).isEqualTo(palette.soil().size() - 1);
    }
}
