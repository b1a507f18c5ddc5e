package org.gritwright.examples.fleetday;

import java.util.Set;

/** Texts of others, made harmless for a terminal. */
final class PlainText {
    private static final char DELETE = 0x7F;
    private static final int LEFT_TO_RIGHT_MARK = 0x200E;
    private static final int RIGHT_TO_LEFT_MARK = 0x200F;
    private static final int ARABIC_LETTER_MARK = 0x061C;

    private static final Set<Byte> TURNING = Set.of(
            Character.DIRECTIONALITY_LEFT_TO_RIGHT_EMBEDDING,
            Character.DIRECTIONALITY_LEFT_TO_RIGHT_OVERRIDE,
            Character.DIRECTIONALITY_RIGHT_TO_LEFT_EMBEDDING,
            Character.DIRECTIONALITY_RIGHT_TO_LEFT_OVERRIDE,
            Character.DIRECTIONALITY_POP_DIRECTIONAL_FORMAT,
            Character.DIRECTIONALITY_LEFT_TO_RIGHT_ISOLATE,
            Character.DIRECTIONALITY_RIGHT_TO_LEFT_ISOLATE,
            Character.DIRECTIONALITY_FIRST_STRONG_ISOLATE,
            Character.DIRECTIONALITY_POP_DIRECTIONAL_ISOLATE);

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

    /**
     * A text of lines without control characters and without those that turn the direction of writing: a name can't make what
     * stands after it read backwards. Joiners stay, which some languages need.
     */
    static String page(String text) {
        if (isPlainPage(text)) {
            return text;
        }
        StringBuilder plain = new StringBuilder(text.length());
        text.codePoints().map(c -> isOfPage(c) ? c : 0xFFFD).forEach(plain::appendCodePoint);
        return plain.toString();
    }

    /** Whether nothing has to be replaced, as almost always. */
    private static boolean isPlainPage(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean isAscii = c >= ' ' && c < DELETE;
            // Half of what two characters stand for counts as not plain: then the slow way decides.
            if (!isAscii && !isOfPage(c)) {
                return false;
            }
        }
        return true;
    }

    /** A text of which the end may be left out. */
    static String shortened(String text, int longest) {
        return text.codePointCount(0, text.length()) <= longest
                ? text
                : text.substring(0, text.offsetByCodePoints(0, longest - 1)) + "…";
    }

    private static boolean isOfPage(int codePoint) {
        return switch (Character.getType(codePoint)) {
            case Character.CONTROL -> codePoint == '\n' || codePoint == '\t';
            case Character.SURROGATE -> false;
            case Character.FORMAT ->
                !TURNING.contains(Character.getDirectionality(codePoint))
                        && codePoint != LEFT_TO_RIGHT_MARK
                        && codePoint != RIGHT_TO_LEFT_MARK
                        && codePoint != ARABIC_LETTER_MARK;
            default -> true;
        };
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
