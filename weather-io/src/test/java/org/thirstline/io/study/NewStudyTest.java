package org.thirstline.io.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.thirstline.io.text.InputErrors.assertRefused;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.io.text.InputFileError;
import org.thirstline.io.text.SectionKeys;

class NewStudyTest {

    @TempDir
    private Path folder;

    @Test
    void startsAStudyThatReadsOnceItHasWeather() throws IOException {
        List<Path> written = NewStudy.write(folder.resolve("deep/new"));
        assertThat(written)
                .extracting(Path::getFileName)
                .map(Path::toString)
                .containsExactly("study.yaml", "README.md");

        Path study = written.get(0);
        assertRefused(() -> StudyReader.read(study), InputFileError.FILE_NOT_FOUND, "weather.file", "weather.csv");
        Files.writeString(study.resolveSibling("weather.csv"), "");
        assertThat(StudyReader.read(study).invented()).isTrue();
    }

    @Test
    void theStarterShowsEveryKeyAndTheReadmeExplainsIt() throws IOException {
        List<Path> written = NewStudy.write(folder);
        String study = Files.readString(written.get(0));
        String readme = Files.readString(written.get(1));
        for (SectionKeys section : StudyKeys.sections()) {
            section.keys().forEach(key -> {
                assertThat(study).as(section.name()).containsPattern("\\b" + key.name() + ":");
                assertThat(readme).as(section.name()).contains("`" + key.name() + "`", key.meaning());
            });
        }
    }

    /** What is commented out must work when the comment sign is taken away. */
    @Test
    void commentedSettingsWork() throws IOException {
        NewStudy.write(folder);
        new StudyFolder(folder);
        String text = Files.readString(folder.resolve("study.yaml"));
        String tail = Arrays.stream(text.substring(text.indexOf("# stubble:")).split("\n"))
                .filter(line -> !line.startsWith("#   #"))
                .map(line -> line.replaceFirst("^# ", ""))
                .collect(Collectors.joining("\n"));
        String zones = Arrays.stream(text.substring(text.indexOf("# zones:"), text.indexOf("harvest:"))
                        .split("\n"))
                .map(line -> line.replaceFirst("^# ", ""))
                .collect(Collectors.joining("\n"));
        String all = text.substring(0, text.indexOf("# The soil")) + zones + "\nharvest:\n  window: 02-01 to 04-15\n"
                + "  max_moisture: 20 %\n  max_topsoil_wetness: 90 % of field capacity\n" + tail + "\n";
        Path file = Files.writeString(folder.resolve("all.yaml"), all);

        Study study = StudyReader.read(file);
        assertThat(study.zones()).hasSize(2);
        assertThat(study.classes().isGiven()).isTrue();
        assertThat(study.plots()).isPresent();
        assertThat(study.years()).isPresent();
    }

    @Test
    void overwritesNothing() throws IOException {
        Path mine = Files.writeString(folder.resolve("README.md"), "mine");
        assertRefused(() -> NewStudy.write(folder), InputFileError.FILE_EXISTS, "README.md", "nothing was written");
        assertThat(folder.resolve("study.yaml")).doesNotExist();
        assertThat(mine).hasContent("mine");
        assertRefused(() -> NewStudy.write(mine), InputFileError.FILE_EXISTS, "README.md");
    }
}
