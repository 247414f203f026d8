package org.thirstline.io.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.thirstline.io.text.InputErrors.assertRefused;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DocumentReaderTest {

    @Test
    void yamlNodesKnowTheirLines() {
        Node.Mapping root = DocumentReader.parse(
                "a.yaml", "# comment\ntitle: x\n\nsoil:\n  layers:\n    - {thickness: 1 m}\n    - thickness: 2 m\n");

        assertThat(entry(root, "title").line()).isEqualTo(2);
        Node.Mapping soil = (Node.Mapping) entry(root, "soil").value();
        Node.Sequence layers = (Node.Sequence) entry(soil, "layers").value();
        assertThat(entry(soil, "layers").line()).isEqualTo(5);
        assertThat(layers.items()).extracting(Node::line).containsExactly(6, 7);
    }

    @Test
    void jsonNodesKnowTheirLines() {
        Node.Mapping root =
                DocumentReader.parse("a.json", "{\n \"title\": \"x\",\n \"site\": {\n  \"elevation_m\": 3}\n}");

        assertThat(entry(root, "title").line()).isEqualTo(2);
        Node.Mapping site = (Node.Mapping) entry(root, "site").value();
        assertThat(entry(site, "elevation_m").line()).isEqualTo(4);
    }

    @Test
    void scalarsKeepTheirTextAndLook() {
        Node.Mapping root =
                DocumentReader.parse("a.yaml", "\uFEFFa: 03-01\nb: 1.50\nc: true\nd:\ne: 2009-04-20\nf: no\ng: '7'\n");

        assertThat(entry(root, "a").value()).isEqualTo(new Node.Scalar(1, "03-01", Node.ScalarKind.TEXT));
        assertThat(entry(root, "b").value()).isEqualTo(new Node.Scalar(2, "1.50", Node.ScalarKind.NUMBER));
        assertThat(entry(root, "c").value()).isEqualTo(new Node.Scalar(3, "true", Node.ScalarKind.FLAG));
        assertThat(((Node.Scalar) entry(root, "d").value()).scalarKind()).isEqualTo(Node.ScalarKind.NOTHING);
        assertThat(entry(root, "e").value()).isEqualTo(new Node.Scalar(5, "2009-04-20", Node.ScalarKind.TEXT));
        assertThat(entry(root, "f").value()).isEqualTo(new Node.Scalar(6, "no", Node.ScalarKind.TEXT));
        assertThat(((Node.Scalar) entry(root, "g").value()).scalarKind()).isEqualTo(Node.ScalarKind.TEXT);
    }

    @Test
    void refusesWhatIsNotOneSection() {
        refused("a: 1\nb: 2\na: 3\n", InputFileError.DUPLICATE_KEY, "a.yaml:3", "'a'", "line 1");
        refused("a: &x 1\nb: *x\n", InputFileError.SYNTAX, "a.yaml:2", "anchors");
        refused("a: 1\n---\nb: 2\n", InputFileError.SYNTAX, "second document");
        refused("- 1\n- 2\n", InputFileError.WRONG_KIND, "a.yaml:1", "a list", "keys");
        refused("just words\n", InputFileError.WRONG_KIND, "a.yaml:1", "'just words'");
        refused("", InputFileError.WRONG_KIND, "a.yaml:1", "empty");
        refused("# only a comment\n", InputFileError.WRONG_KIND, "a.yaml:1", "empty");
    }

    @Test
    void placesSyntaxErrors() {
        refused("a: 1\nb: [1, 2\nc: 3\n", InputFileError.SYNTAX, "a.yaml:3");
        refused("a: 1\n\tb: 2\n", InputFileError.SYNTAX, "a.yaml:2");
        assertRefused(
                () -> DocumentReader.parse("a.json", "{\n\"a\": 1,\n\"b\" 2}"), InputFileError.SYNTAX, "a.json:3");
    }

    @Test
    void refusesAbsentAndUnreadableFiles(@TempDir Path folder) throws IOException {
        Path absent = folder.resolve("none.yaml");
        assertRefused(() -> DocumentReader.read(absent), InputFileError.FILE_NOT_FOUND, "none.yaml");
        Path latin = Files.write(folder.resolve("latin.yaml"), new byte[] {'a', ':', ' ', (byte) 0xE4, '\n'});
        assertRefused(() -> DocumentReader.read(latin), InputFileError.UNREADABLE, "latin.yaml", "UTF-8");
        assertRefused(() -> DocumentReader.read(folder), InputFileError.UNREADABLE, folder.toString());
    }

    private static void refused(String text, InputFileError code, String... parts) {
        assertRefused(() -> DocumentReader.parse("a.yaml", text), code, parts);
    }

    private static Node.Entry entry(Node.Mapping mapping, String key) {
        Node.Entry entry = mapping.entries().get(key);
        assertThat(entry).as(key).isNotNull();
        return entry;
    }
}
