package org.gritwright.core.fuzz;

import java.util.List;

/** Bytes read as choices, one after the other. Where they end, the first of whatever is offered is taken. */
final class Choices {
    private final byte[] data;
    private int next;

    Choices(byte[] data) {
        this.data = data.clone();
    }

    boolean isEmpty() {
        return next >= data.length;
    }

    int oneByte() {
        return isEmpty() ? 0 : data[next++] & 0xff;
    }

    /** One of 0, 1, ... to below the bound, which is at most 65 536. */
    int below(int bound) {
        int chosen = bound <= 256 ? oneByte() : oneByte() << 8 | oneByte();
        return chosen % bound;
    }

    /** Rare: false where the bytes end. */
    boolean once(int in) {
        return below(in) == in - 1;
    }

    <T> T of(List<T> list) {
        return list.get(below(list.size()));
    }

    /** A decimal number, as plain as it is entered or as large or small as can be. */
    String number() {
        return switch (below(6)) {
            case 0 -> String.valueOf(below(65_536));
            case 1 -> below(256) + "." + below(1000);
            case 2 -> "-" + below(256);
            case 3 -> below(10) + "e" + (below(800) - 400);
            case 4 -> of(List.of("0", "-0", "0.0", "4.9e-324", "2.2250738585072014e-308", "1.7976931348623157e308"));
            default -> String.valueOf(Double.longBitsToDouble(bits()));
        };
    }

    private long bits() {
        long bits = 0;
        for (int i = 0; i < Long.BYTES; i++) {
            bits = bits << 8 | oneByte();
        }
        return bits;
    }

    /** Any characters, lone surrogates among them. */
    String text(int most) {
        int length = below(most + 1);
        StringBuilder text = new StringBuilder(length);
        for (int i = 0; i < length && !isEmpty(); i++) {
            text.append((char) (once(8) ? below(65_536) : 32 + below(95)));
        }
        return text.toString();
    }
}
