package org.thirstline.charts;

import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.thirstline.charts.theme.Palette;
import org.thirstline.model.climate.SeasonClass;

/** Turns of phrase that several charts share. */
final class Subtitles {

    private Subtitles() {}

    /** Puts the zone before what the data are; without a zone the text starts with a capital. */
    static String sentence(String zone, String text) {
        return zone.isBlank() ? Character.toUpperCase(text.charAt(0)) + text.substring(1) : zone + ": " + text;
    }

    static String date(LocalDate date) {
        return date.getDayOfMonth() + " " + date.getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH) + " "
                + date.getYear();
    }

    static String dayMonth(LocalDate date) {
        return date.getDayOfMonth() + " " + date.getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
    }

    static String count(int n, String one, String many) {
        return n == 1 ? "1 " + one : n + " " + many;
    }

    /** Joins names as in a sentence. */
    static String listed(List<String> names) {
        int last = names.size() - 1;
        return last < 1
                ? String.join("", names)
                : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
    }

    /** Returns a count as a word up to ten, in figures beyond. */
    static String number(int n) {
        String[] words = {"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"};
        return n < words.length ? words[n] : Integer.toString(n);
    }

    static List<KeyEntry> marks(Palette palette, Iterable<SeasonClass> classes) {
        List<KeyEntry> entries = new ArrayList<>();
        for (SeasonClass seasonClass : classes) {
            entries.add(KeyEntry.mark(palette, seasonClass, seasonClass.word() + " season"));
        }
        return entries;
    }
}
