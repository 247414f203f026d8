package org.thirstline.io.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.thirstline.model.error.InputException;

/**
 * A section of a document seen through its declared keys. Creating one refuses unknown, missing and contradicting keys;
 * reading a value refuses the wrong kind, unit or size. Every refusal names file, line and key. Immutable and thread-safe.
 */
public final class Section {

    private final String file;
    private final String path;
    private final int line;
    private final Node.Mapping node;
    private final SectionKeys keys;

    private Section(String file, String path, int line, Node.Mapping node, SectionKeys keys) {
        this.file = file;
        this.path = path;
        this.line = line;
        this.node = node;
        this.keys = keys;
    }

    /** Checks the top level of a document against its declared keys. */
    public static Section root(String file, Node.Mapping node, SectionKeys keys) {
        return checked(file, "", node.line(), node, keys);
    }

    private static Section checked(String file, String path, int line, Node.Mapping node, SectionKeys keys) {
        Section section = new Section(file, path, line, node, keys);
        SectionCheck.check(section, node, keys);
        return section;
    }

    /** Returns whether a key is given, in any spelling. */
    public boolean has(String name) {
        return spelling(name) != null;
    }

    /** Returns the line of a key, of the section if the key is not given. */
    public int line(String name) {
        String spelling = spelling(name);
        return spelling == null ? line : entry(spelling).line();
    }

    /** Returns file, line and key of an entry, as messages start. */
    public String place(String name) {
        String spelling = spelling(name);
        return at(line(name), join(spelling == null ? name : spelling));
    }

    /** Returns file, line and path of the section. */
    public String place() {
        return at(line, path.isEmpty() ? keys.name() : path);
    }

    /** Returns the key with the sections around it. */
    public String join(String name) {
        return path.isEmpty() ? name : path + "." + name;
    }

    /** Returns the refusal of an entry, to be thrown. */
    public InputException refusal(String name, InputFileError error, Object... arguments) {
        return new InputException(error, arguments).at(place(name));
    }

    /** Returns what the supplier builds; a refusal by the model gets the place of this section in front. */
    public <T> T build(Supplier<T> supplier) {
        return located(place(), supplier);
    }

    /** Returns what the supplier builds; a refusal by the model gets the place of the entry in front. */
    public <T> T build(String name, Supplier<T> supplier) {
        return located(place(name), supplier);
    }

    /** Returns a text. */
    public Optional<String> text(String name) {
        return scalar(name, node -> Scalars.text(node));
    }

    /** Returns one of the declared words. */
    public Optional<String> choice(String name) {
        ValueKind.Choice choice = (ValueKind.Choice) keys.declared(name).kind();
        return scalar(name, node -> Scalars.choice(node, choice));
    }

    /** Returns true or false. */
    public Optional<Boolean> flag(String name) {
        return scalar(name, Scalars::flag);
    }

    /** Returns a number without a unit. */
    public OptionalDouble number(String name) {
        ValueKind.Plain plain = (ValueKind.Plain) keys.declared(name).kind();
        return orEmpty(scalar(name, node -> Scalars.number(node, plain.lowest(), plain.highest(), "")));
    }

    /** Returns a value in the unit of its dimension. */
    public OptionalDouble measure(String name) {
        ValueKind.Measure measure = (ValueKind.Measure) keys.declared(name).kind();
        boolean plainKey = name.equals(spelling(name));
        return orEmpty(
                scalar(name, node -> plainKey ? Scalars.measure(name, node, measure) : Scalars.bare(node, measure)));
    }

    /** Returns a value that has been declared as required, in the unit of its dimension. */
    public double required(String name) {
        return measure(name).orElseThrow(() -> missing(name));
    }

    /** Returns a value that has been read with one of the readers above, or the refusal of its absence. */
    public <T> T required(String name, Optional<T> value) {
        return value.orElseThrow(() -> missing(name));
    }

    /** Returns a value of one of the kinds that {@link Scalars} reads. */
    public <T> Optional<T> value(String name, Function<Node.Scalar, T> reader) {
        return scalar(name, reader);
    }

    /** Returns the values of a list. */
    public <T> List<T> values(String name, Function<Node.Scalar, T> reader) {
        List<T> read = new ArrayList<>();
        int number = 0;
        for (Node item : items(name)) {
            String place = at(item.line(), join(name) + "[" + ++number + "]");
            read.add(located(place, () -> reader.apply(Scalars.scalar(item))));
        }
        return read;
    }

    /** Returns a section inside this one. */
    public Optional<Section> section(String name) {
        String spelling = spelling(name);
        ValueKind.Nested nested = (ValueKind.Nested) keys.declared(name).kind();
        if (spelling == null) {
            return Optional.empty();
        }
        Node.Entry entry = entry(spelling);
        return Optional.of(
                nested(join(name), entry.line(), entry.value(), nested.keys().get()));
    }

    /** Returns the sections of a list, empty if the key is not given. */
    public List<Section> sections(String name) {
        ValueKind.NestedList nested = (ValueKind.NestedList) keys.declared(name).kind();
        List<Section> sections = new ArrayList<>();
        for (Node item : items(name)) {
            String itemPath = join(name) + "[" + (sections.size() + 1) + "]";
            sections.add(nested(itemPath, item.line(), item, nested.keys().get()));
        }
        return sections;
    }

    /** Returns the keys and values of a section with free keys, each to be read by the caller. */
    public Node.Mapping node() {
        return node;
    }

    private Section nested(String nestedPath, int nestedLine, Node value, SectionKeys nestedKeys) {
        if (!(value instanceof Node.Mapping mapping)) {
            throw new InputException(
                            InputFileError.WRONG_KIND,
                            value.kind(),
                            "keys: " + String.join(", ", nestedKeys.spellings()))
                    .at(at(nestedLine, nestedPath));
        }
        return checked(file, nestedPath, nestedLine, mapping, nestedKeys);
    }

    private List<Node> items(String name) {
        keys.declared(name);
        String spelling = spelling(name);
        if (spelling == null) {
            return List.of();
        }
        Node value = entry(spelling).value();
        if (!(value instanceof Node.Sequence sequence) || sequence.items().isEmpty()) {
            String found = value instanceof Node.Sequence ? "an empty list" : value.kind();
            throw refusal(name, InputFileError.WRONG_KIND, found, "a list");
        }
        return sequence.items();
    }

    private <T> Optional<T> scalar(String name, Function<Node.Scalar, T> reader) {
        keys.declared(name);
        String spelling = spelling(name);
        return spelling == null
                ? Optional.empty()
                : Optional.of(located(
                        place(name),
                        () -> reader.apply(Scalars.scalar(entry(spelling).value()))));
    }

    private Node.Entry entry(String spelling) {
        Node.Entry entry = node.entries().get(spelling);
        if (entry == null) {
            throw new IllegalStateException(spelling);
        }
        return entry;
    }

    private @Nullable String spelling(String name) {
        for (String spelling : keys.declared(name).spellings()) {
            if (node.entries().containsKey(spelling)) {
                return spelling;
            }
        }
        return null;
    }

    private InputException missing(String name) {
        KeySpec key = keys.declared(name);
        return refusal(name, InputFileError.MISSING_KEY, name, key.meaning(), key.exampleLine());
    }

    String at(int someLine, String key) {
        return file + ":" + someLine + ": " + key;
    }

    private static OptionalDouble orEmpty(Optional<Double> value) {
        return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
    }

    private static <T> T located(String place, Supplier<T> supplier) {
        try {
            return supplier.get();
        } catch (InputException refused) {
            throw refused.at(place);
        }
    }
}
