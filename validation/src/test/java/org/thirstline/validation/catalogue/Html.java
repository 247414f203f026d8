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

    /** Escapes text and makes what Markdown marks in it: links, code, strong words. */
    static String inline(String text) {
        return escape(text)
                .replaceAll("\\[([^\\]]+)\\]\\(([^)]+)\\)", "<a href=\"$2\">$1</a>")
                .replaceAll("`([^`]+)`", "<code>$1</code>")
                .replaceAll("\\*\\*([^*]+)\\*\\*", "<strong>$1</strong>");
    }

    /** Text for a cell of a Markdown table. */
    static String cell(String text) {
        return text.replace("|", "\\|").replace("<", "&lt;").replace("\n", " ");
    }
}
