package org.gritwright.examples.fleetmemory;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.Optional;

/**
 * What the first object of a text says that it is, and what follows it.
 *
 * @param format its "format"; none if it names none, or there is no object
 * @param after the token after it; none where the text ends
 */
record DocumentHead(Optional<String> format, Optional<JsonToken> after) {
    static final DocumentHead NONE = new DocumentHead(Optional.empty(), Optional.empty());

    static DocumentHead of(JsonParser json) throws IOException {
        if (json.nextToken() != JsonToken.START_OBJECT) {
            return NONE;
        }
        Optional<String> format = Optional.empty();
        while (json.nextToken() == JsonToken.FIELD_NAME) {
            boolean isFormat = json.currentName().equals("format");
            if (json.nextToken() == JsonToken.VALUE_STRING && isFormat && format.isEmpty()) {
                format = Optional.of(json.getText());
            }
            json.skipChildren();
        }
        return new DocumentHead(format, Optional.ofNullable(json.nextToken()));
    }
}
