package org.gritwright.core.json;

import java.io.IOException;
import java.io.InputStream;

/** A stream that refuses to give more than so many bytes, so that a document past the limit is never held in memory. */
final class BoundedStream extends InputStream {

    /** There are more bytes than allowed. */
    static final class TooLongException extends IOException {
        private static final long serialVersionUID = 1L;
    }

    private final InputStream in;
    private long left;

    BoundedStream(InputStream in, long bytes) {
        this.in = in;
        this.left = bytes;
    }

    @Override
    public int read() throws IOException {
        int one = in.read();
        return counted(one, one < 0 ? 0 : 1);
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int count = in.read(buffer, offset, length);
        return counted(count, Math.max(count, 0));
    }

    private int counted(int result, int bytes) throws TooLongException {
        left -= bytes;
        if (left < 0) {
            throw new TooLongException();
        }
        return result;
    }
}
