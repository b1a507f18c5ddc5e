package org.gritwright.examples.fleetday;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;

/** Lets nothing through to a terminal that could move its cursor, change its colors or turn the direction of writing. */
final class PlainWriter extends FilterWriter {
    PlainWriter(Writer out) {
        super(out);
    }

    @Override
    public void write(int c) throws IOException {
        write(Character.toString((char) c));
    }

    @Override
    public void write(char[] text, int offset, int length) throws IOException {
        write(new String(text, offset, length));
    }

    @Override
    public void write(String text, int offset, int length) throws IOException {
        write(text.substring(offset, offset + length));
    }

    @Override
    public void write(String text) throws IOException {
        String lines = text.replace("\r\n", "\n");
        for (int start = 0; start <= lines.length(); ) {
            int end = lines.indexOf('\n', start);
            out.write(PlainText.oneLine(lines.substring(start, end < 0 ? lines.length() : end)));
            if (end < 0) {
                return;
            }
            out.write(System.lineSeparator());
            start = end + 1;
        }
    }
}
