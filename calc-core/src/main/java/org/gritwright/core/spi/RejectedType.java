package org.gritwright.core.spi;

/**
 * A conveyor or gate type that a registry left out.
 *
 * @param provider what offered it: the class, or what the service loader said where there is no class
 * @param reason why it was left out
 */
public record RejectedType(String provider, String reason) {
    /**
     * Provider and reason.
     *
     * @return for example "org.example.Belt: asks for SPI level 2, this library has 1"
     */
    @Override
    public String toString() {
        return provider + ": " + reason;
    }
}
