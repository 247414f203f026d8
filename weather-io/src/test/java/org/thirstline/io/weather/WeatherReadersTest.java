package org.thirstline.io.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.thirstline.io.weather.WeatherSamples.file;
import static org.thirstline.io.weather.WeatherSamples.read;
import static org.thirstline.io.weather.WeatherSamples.refused;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

class WeatherReadersTest {

    @TempDir
    Path folder;

    @ParameterizedTest
    @EnumSource
    void everyFormatIsRecognisedByItsContent(WeatherFormat format) {
        RawWeather raw = read(folder, WeatherSamples.all().get(format));
        assertThat(raw.format()).isEqualTo(format);
    }

    @ParameterizedTest
    @EnumSource
    void lineEndsByteOrderMarkAndGzipMakeNoDifference(WeatherFormat format) {
        String text = WeatherSamples.all().get(format);
        RawWeather plain = read(folder, text);
        RawWeather windows = read(folder, "\ufeff" + text.replace("\n", "\r\n"));
        RawWeather zipped = WeatherReaders.read(file(folder, WeatherSamples.gzip(text)), ReadOptions.DEFAULT);
        RawWeather withoutLastLineEnd = read(folder, text.substring(0, text.length() - 1));
        for (RawWeather other : new RawWeather[] {windows, zipped, withoutLastLineEnd}) {
            assertThat(other.start()).isEqualTo(plain.start());
            assertThat(other.site()).isEqualTo(plain.site());
            assertThat(other.issues()).isEqualTo(plain.issues());
            for (RawVariable variable : RawVariable.values()) {
                assertThat(other.column(variable)).as(variable.words()).isEqualTo(plain.column(variable));
            }
        }
    }

    @Test
    void latinOneIsReadWhereUtf8IsNotValid() {
        byte[] latin = WeatherSamples.PLAIN.replace("Larkmoor", "L\u00e4rkmoor").getBytes(StandardCharsets.ISO_8859_1);
        RawWeather raw = WeatherReaders.read(file(folder, latin), ReadOptions.DEFAULT);
        assertThat(raw.site().name()).isEqualTo("L\u00e4rkmoor field station");
    }

    @Test
    void checksumIsThatOfTheFileOnDisk() {
        // SHA-256 of "abc" as in FIPS 180-4, example of one block
        Path abc = file(folder, "abc");
        try (LineReader lines = new LineReader(abc)) {
            lines.head(10);
            assertThat(lines.sha256()).isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
        }
    }

    @Test
    void whatIsNoWeatherIsRefused() {
        refused(InputError.FILE_EMPTY, () -> read(folder, ""));
        refused(InputError.FILE_EMPTY, () -> read(folder, "\n  \n"));
        refused(InputError.FILE_NOT_FOUND, () -> WeatherReaders.read(folder.resolve("no"), ReadOptions.DEFAULT));
        refused(InputError.FILE_UNREADABLE, () -> WeatherReaders.read(folder, ReadOptions.DEFAULT));
        refused(InputError.FILE_UNREADABLE, () -> read(folder, "PK\u0003\u0004\u0000\u0000"));
        refused(InputError.LINE_MALFORMED, () -> read(folder, "{\"daily\": [1, 2"));
        refused(InputError.FORMAT_UNKNOWN, () -> read(folder, "{\"daily\": [1, 2]}"));
        byte[] utf16 = WeatherSamples.PLAIN.getBytes(StandardCharsets.UTF_16);
        refused(InputError.FILE_NOT_TEXT, () -> WeatherReaders.read(file(folder, utf16), ReadOptions.DEFAULT));
        InputException error = refused(InputError.FORMAT_UNKNOWN, () -> read(folder, "Dear all,\nrain was fine\n"));
        assertThat(error).hasMessageContaining("Dear all").hasMessageContaining("Daymet");
    }

    @Test
    void cutGzipIsRefused() {
        byte[] whole = WeatherSamples.gzip(WeatherSamples.PLAIN);
        byte[] cut = java.util.Arrays.copyOf(whole, whole.length / 2);
        refused(InputError.FILE_UNREADABLE, () -> WeatherReaders.read(file(folder, cut), ReadOptions.DEFAULT));
    }

    @Test
    void forcedFormatIsTakenAtItsWord() {
        ReadOptions options = ReadOptions.DEFAULT.withFormat(WeatherFormat.KNMI);
        refused(InputError.FORMAT_MISMATCH, () -> WeatherReaders.read(file(folder, WeatherSamples.DAYMET), options));
    }

    @Test
    void yearlyFilesJoinIntoOneRecord() {
        String december = WeatherSamples.PLAIN.lines().limit(5).reduce("", (a, b) -> a + b + "\n");
        RawWeather first = read(folder, december + "2011-12-30,1,2,3,4,5,0.6\n");
        RawWeather second = read(folder, december + "2012-01-02,2,3,4,5,6,0.7\n");
        RawWeather joined = WeatherFiles.join(java.util.List.of(first, second));
        assertThat(joined.days()).isEqualTo(4);
        assertThat(joined.absentDays()).isEqualTo(2);
        assertThat(joined.value(RawVariable.RAIN, 3)).isEqualTo(4.0);
        assertThat(joined.sources()).hasSize(2);
        RawWeather other = read(folder, december + "2011-12-30,1,2.5,3,4,5,0.6\n");
        refused(InputError.FILES_DISAGREE, () -> WeatherFiles.join(java.util.List.of(first, other)));
        RawWeather elsewhere = read(folder, december.replace("52.1", "42.1") + "2012-01-02,2,3,4,5,6,0.7\n");
        refused(InputError.FILES_DISAGREE, () -> WeatherFiles.join(java.util.List.of(first, elsewhere)));
    }
}
