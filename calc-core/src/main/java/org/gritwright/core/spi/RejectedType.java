package org.gritwright.core.spi;

/**
 * A conveyor or gate type that a registry left out.
 *
 * @param provider the class that was offered, or "service provider" where none could be made
 * @param reason why it was left out
 */
public record RejectedType(String provider, String reason) {
    /**
     * Provider and reason.
     *
     * @return for example "org.example.Belt: SPI level must be one of this library's, 1 to 1: 2"
     */
    @Override
    public String toString() {
        return provider + ": " + reason;
    }
}
