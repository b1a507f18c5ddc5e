package org.gritwright.examples.fleetmemory;

import io.pebbletemplates.pebble.PebbleEngine;
import io.pebbletemplates.pebble.loader.MemoryLoader;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Pattern;

/** The pages' templates, read once: the engine keeps what it has read. */
final class Templates {
    private static final List<String> NAMES =
            List.of("fleet.peb", "truck.peb", "season.peb", "parts.peb", "cautions.peb");

    /** No name may move what stands after it, or turn the direction in which it is read. */
    private static final Pattern UNSEEN =
            Pattern.compile("[\\p{Cc}&&[^\\n\\t]]|\\p{Cs}|[\\u061C\\u200E\\u200F\\u202A-\\u202E\\u2066-\\u2069]");

    private final PebbleEngine engine;
    private final String style;

    private Templates(PebbleEngine engine, String style) {
        this.engine = engine;
        this.style = style;
    }

    static Templates read() throws IOException {
        MemoryLoader loader = new MemoryLoader();
        for (String name : NAMES) {
            loader.addTemplate(name, resource(name));
        }
        // Every value is escaped for HTML unless the template says otherwise.
        PebbleEngine engine = new PebbleEngine.Builder()
                .loader(loader)
                .strictVariables(true)
                .defaultLocale(Locale.ROOT)
                .build();
        return new Templates(engine, resource("pages.css"));
    }

    /** A page. */
    String filled(String name, Map<String, Object> model) throws IOException {
        Map<String, Object> all = new HashMap<>(model);
        all.put("style", style);
        all.put("cautionFirst", Caution.FIRST);
        all.put("cautionRest", Caution.REST);
        StringWriter page = new StringWriter();
        engine.getTemplate(name).evaluate(page, all);
        return Wholes.kept(Words.times(UNSEEN.matcher(page.toString()).replaceAll("\uFFFD")));
    }

    private static String resource(String name) throws IOException {
        try (InputStream in = Objects.requireNonNull(Templates.class.getResourceAsStream("pages/" + name), name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
