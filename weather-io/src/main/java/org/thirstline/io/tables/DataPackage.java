package org.thirstline.io.tables;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.thirstline.io.text.JsonText;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** The Frictionless Data Package descriptor of a result folder: type, unit and meaning of every column of every table. */
public final class DataPackage {

    /** File name inside the result folder. */
    public static final String FILE = "datapackage.json";

    private DataPackage() {}

    /**
     * Returns the descriptor.
     *
     * @param title title of the study
     * @param description what the tables come from, and cautions that go with them
     * @param tables tables of the folder, in order
     * @param folder where the tables have been written, for sizes and checksums
     */
    public static String descriptor(String title, String description, List<TableInfo> tables, Path folder) {
        ObjectNode descriptor = JsonNodeFactory.instance.objectNode();
        descriptor.put("profile", "tabular-data-package");
        descriptor.put("name", name(title));
        descriptor.put("title", title);
        descriptor.put("description", description);
        ArrayNode resources = descriptor.putArray("resources");
        tables.forEach(table -> describe(table, folder.resolve(table.path()), resources.addObject()));
        return JsonText.of(descriptor);
    }

    private static void describe(TableInfo table, Path file, ObjectNode resource) {
        resource.put("profile", "tabular-data-resource");
        resource.put("name", name(table.path().replaceFirst("\\.[^.]*$", "")));
        resource.put("path", table.path());
        resource.put("title", table.title());
        resource.put("format", "csv");
        resource.put("mediatype", "text/csv");
        resource.put("encoding", "utf-8");
        resource.put("bytes", sizeOf(file));
        resource.put("hash", "sha256:" + Sha256.of(file));
        resource.putObject("dialect").put("delimiter", ",").put("lineTerminator", "\n");
        ObjectNode schema = resource.putObject("schema");
        ArrayNode fields = schema.putArray("fields");
        table.columns().forEach(column -> describe(column, fields.addObject()));
        schema.putArray("missingValues").add("");
    }

    private static void describe(ColumnInfo column, ObjectNode field) {
        field.put("name", column.name());
        field.put("type", column.type().word());
        if (!column.unit().isEmpty()) {
            field.put("unit", column.unit());
        }
        field.put("description", column.meaning());
    }

    private static long sizeOf(Path file) {
        try {
            return Files.size(file);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** Names of packages and resources hold lower-case letters, digits, dots, dashes and underscores only. */
    private static String name(String text) {
        String name =
                text.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9._]+", "-").replaceAll("^-+|-+$", "");
        return name.isEmpty() ? "study" : name;
    }
}
