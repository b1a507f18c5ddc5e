package org.gritwright.examples.fleetday;

/** Texts of others, made harmless for a terminal. */
final class PlainText {
    private PlainText() {}

    /**
     * One line without control and format characters: a truck's id can't move the cursor, change colors or reverse the
     * direction of writing.
     */
    static String oneLine(String text) {
        StringBuilder plain = new StringBuilder();
        text.codePoints().map(c -> isPlain(c) ? c : '?').forEach(plain::appendCodePoint);
        return plain.toString();
    }

    private static boolean isPlain(int codePoint) {
        return switch (Character.getType(codePoint)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR,
                    Character.SURROGATE -> false;
            default -> true;
        };
    }
}
