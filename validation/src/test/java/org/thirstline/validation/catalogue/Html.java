package org.thirstline.validation.catalogue;

/** Text for HTML and Markdown. */
final class Html {

    private Html() {}

    static String escape(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    /** Text for a cell of a Markdown table. */
    static String cell(String text) {
        return text.replace("|", "\\|").replace("<", "&lt;").replace("\n", " ");
    }
}
