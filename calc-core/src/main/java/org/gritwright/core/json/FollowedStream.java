package org.gritwright.core.json;

import java.io.IOException;
import java.io.InputStream;
import java.util.BitSet;

/**
 * A stream that remembers where its lines begin and which bytes begin no character, two bits a byte, so that a place can be told as
 * an editor counts it. The parser counts bytes, in which "78 lb/ft³" is longer than it looks. It also keeps the last bytes, for
 * what is said of a text that isn't JSON.
 */
final class FollowedStream extends InputStream {
    /** More than a parser reads at once, twice. */
    private static final int KEPT = 1 << 15;

    private final InputStream in;
    private final BitSet lineStarts = new BitSet();
    private final BitSet continued = new BitSet();
    private final byte[] last = new byte[KEPT];
    private int count;
    private boolean isAfterReturn;

    /** The last offset that was asked for, and its line: most problems are found in the order of the text. */
    private int known;

    private int knownLine = 1;

    FollowedStream(InputStream in) {
        this.in = in;
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int read = in.read(buffer, offset, Math.min(length, KEPT));
        if (read > 0) {
            // Past every limit nothing is followed, which is about to be told.
            follow(buffer, offset, Math.min(read, Integer.MAX_VALUE - count));
        }
        return read;
    }

    private void follow(byte[] buffer, int offset, int length) {
        for (int i = 0; i < length; i++) {
            byte one = buffer[offset + i];
            // What is beyond ASCII is negative; most of a text is neither.
            if (one <= '\r' || isAfterReturn) {
                mark(one, count + i);
            }
        }
        int start = count % KEPT;
        int untilEnd = Math.min(length, KEPT - start);
        System.arraycopy(buffer, offset, last, start, untilEnd);
        System.arraycopy(buffer, offset + untilEnd, last, 0, length - untilEnd);
        count += length;
    }

    private void mark(byte one, int at) {
        if (isAfterReturn && one != '\n') {
            lineStarts.set(at);
        }
        if (one == '\n') {
            lineStarts.set(at + 1);
        } else if ((one & 0xC0) == 0x80) {
            continued.set(at);
        }
        isAfterReturn = one == '\r';
    }

    /** The byte at an offset; 0 if it isn't kept any more, or there is none. */
    byte at(int offset) {
        return offset < 0 || offset >= count || offset < count - KEPT ? 0 : last[offset % KEPT];
    }

    /** The line of an offset, from 1. */
    int line(int offset) {
        if (offset < known) {
            known = 0;
            knownLine = 1;
        }
        knownLine += count(lineStarts, known + 1, offset + 1);
        known = offset;
        return knownLine;
    }

    /** The column of an offset in characters, from 1. */
    int column(int offset) {
        int start = Math.max(0, lineStarts.previousSetBit(offset));
        return 1 + offset - start - count(continued, start, offset);
    }

    /** How many bits are set; to look at each would take long in a text of a million lines. */
    private static int count(BitSet bits, int from, int to) {
        return from >= to ? 0 : bits.get(from, to).cardinality();
    }
}
