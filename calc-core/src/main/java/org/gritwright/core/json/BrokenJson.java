package org.gritwright.core.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * What is wrong with a text that isn't JSON, in the words of somebody who types one: the slip and not the parser's trouble with
 * it, which often shows only a line later.
 *
 * @param offset where, in bytes; -1 if nobody knows
 * @param found the slip, or else what the parser says
 */
record BrokenJson(long offset, String found) {
    private static final String CLOSING = "}]";
    private static final String OTHER_QUOTE = "a quotation mark of another kind than \"";

    /** The parser's messages say which character it didn't expect, but where that is differs between its versions. */
    private static final Pattern CHARACTER = Pattern.compile("\\(.*?code (\\d+)");

    private static final Pattern MARKER = Pattern.compile("^Unexpected close marker '(.)': expected '(.)'");
    private static final Pattern TOKEN = Pattern.compile("^Unrecognized token '([^']{1,60})'");

    static BrokenJson of(JsonProcessingException thrown, FollowedStream text, Places places) {
        long offset = thrown.getLocation() == null ? -1 : thrown.getLocation().getByteOffset();
        String message = thrown.getOriginalMessage();
        if (thrown instanceof JsonEOFException || message.startsWith("Unexpected end-of-input")) {
            int open = places.lastOpen();
            String what = open < 0
                    ? ""
                    : " before what begins at line " + text.line(open) + ", column " + text.column(open) + " is closed";
            return new BrokenJson(offset, "the end of the text" + what);
        }
        Matcher token = TOKEN.matcher(message);
        if (token.find()) {
            return new BrokenJson(offset, token.group(1) + " without quotation marks");
        }
        Matcher marker = MARKER.matcher(message);
        if (marker.find()) {
            return new BrokenJson(offset, marker.group(1) + " where " + marker.group(2) + " is missing");
        }
        if (isOtherQuote((int) offset, text)) {
            return new BrokenJson(offset, OTHER_QUOTE);
        }
        Matcher character = CHARACTER.matcher(message);
        if (offset < 0 || !character.find()) {
            return new BrokenJson(offset, message);
        }
        int found = Integer.parseInt(character.group(1));
        int at = text.at((int) offset) == found ? (int) offset : (int) offset - 1;
        return of(found, at, text, message);
    }

    /** Whether one of the typographic ones, three bytes in UTF-8, ends or stands just before an offset. */
    private static boolean isOtherQuote(int offset, FollowedStream text) {
        return IntStream.rangeClosed(offset - 3, offset)
                .anyMatch(i -> text.at(i) == (byte) 0xE2
                        && text.at(i + 1) == (byte) 0x80
                        && text.at(i + 2) >= (byte) 0x98
                        && text.at(i + 2) <= (byte) 0x9D);
    }

    /** What it means that a character stands where the parser can't use it. */
    private static BrokenJson of(int found, int at, FollowedStream text, String message) {
        int before = at - 1;
        while (text.at(before) > 0 && text.at(before) <= ' ') {
            before--;
        }
        char last = (char) text.at(before);
        boolean isMark = CLOSING.indexOf(found) >= 0 || found == ',';
        if (found == '\n' || found == '\r') {
            return new BrokenJson(at, "the end of a line inside a text; is a quotation mark missing?");
        }
        if (last == ',' && isMark) {
            return new BrokenJson(before, "an extra comma before " + (char) found);
        }
        if (found == ',' && (last == '{' || last == '[')) {
            return new BrokenJson(at, "an extra comma after " + last);
        }
        if (last == ':' && isMark) {
            return new BrokenJson(before, "a colon without a value after it");
        }
        return new BrokenJson(at, atStart(found, last, message));
    }

    /** The same for a character with which somebody began something. */
    private static String atStart(int found, char last, String message) {
        if (found == '\'') {
            return OTHER_QUOTE;
        }
        if (found == ':') {
            return "a colon after what is no name; is a bracket or a quotation mark missing before it?";
        }
        if (found == '/' || found == '#') {
            return "a comment, which JSON doesn't have";
        }
        if (message.contains("expecting a colon")) {
            return "a name without a colon after it; or is a quotation mark missing?";
        }
        if (Character.isLetter(found)) {
            return "text outside quotation marks; is one missing?";
        }
        if (Character.isDigit(found) && (last == ',' || last == '{')) {
            return "a name without quotation marks; a number has a point and no comma";
        }
        boolean isValue = Character.isDigit(found) || "\"{[-".indexOf(found) >= 0;
        if (isValue && (Character.isLetterOrDigit(last) || "\"}]".indexOf(last) >= 0)) {
            return "no comma before this";
        }
        return message;
    }
}
