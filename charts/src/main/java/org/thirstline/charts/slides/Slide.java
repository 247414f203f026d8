package org.thirstline.charts.slides;

import java.util.List;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;

/** One slide. */
public sealed interface Slide permits Slide.Opening, Slide.Question, Slide.Text, Slide.Picture {

    /** Returns what the speaker reads; not shown. */
    String notes();

    /**
     * The first slide.
     *
     * @param title what the talk is about
     * @param lines under it
     * @param notes what the speaker reads
     */
    record Opening(String title, List<String> lines, String notes) implements Slide {

        /** Copies the list. */
        public Opening {
            lines = List.copyOf(lines);
        }
    }

    /**
     * The question that the talk answers.
     *
     * @param title the question
     * @param lines what it is asked of
     * @param notes what the speaker reads
     */
    record Question(String title, List<String> lines, String notes) implements Slide {

        /** Copies the list. */
        public Question {
            lines = List.copyOf(lines);
        }
    }

    /**
     * A slide of words.
     *
     * @param title one sentence
     * @param lines a point each
     * @param notes what the speaker reads
     */
    record Text(String title, List<String> lines, String notes) implements Slide {

        /** Copies the list. */
        public Text {
            lines = List.copyOf(lines);
        }
    }

    /**
     * A chart under its finding, which is the title of the slide.
     *
     * @param chart draws it
     * @param notes what the speaker reads
     */
    record Picture(Drawing chart, String notes) implements Slide {}

    /** Draws a chart as the slide needs it. */
    @FunctionalInterface
    interface Drawing {

        /**
         * Returns the chart.
         *
         * @param theme light or dark, as the deck is
         * @param size what fits the room that the deck leaves
         */
        ChartDocument in(ChartTheme theme, ChartSize size);
    }
}
