package org.gritwright.examples.fleetday;

import io.pebbletemplates.pebble.PebbleEngine;
import io.pebbletemplates.pebble.loader.MemoryLoader;
import io.pebbletemplates.pebble.template.PebbleTemplate;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/** A page's template of those beside this class, compiled once and filled in for as many pages as there are, by any thread. */
final class PageTemplate {
    private final PebbleTemplate template;

    private PageTemplate(PebbleTemplate template) {
        this.template = template;
    }

    /** The first template, which may use the others. */
    static PageTemplate of(List<String> names) throws IOException {
        MemoryLoader templates = new MemoryLoader();
        for (String name : names) {
            templates.addTemplate(name, resource(name));
        }
        // The engine escapes every value for HTML unless the template says otherwise.
        PebbleEngine engine = new PebbleEngine.Builder()
                .loader(templates)
                .extension(new MinusSign())
                .strictVariables(true)
                .defaultLocale(Locale.ROOT)
                .build();
        return new PageTemplate(engine.getTemplate(names.get(0)));
    }

    String filled(Map<String, Object> model) throws IOException {
        StringWriter page = new StringWriter();
        template.evaluate(page, model);
        return PlainText.page(page.toString());
    }

    /** A text beside this class. */
    static String resource(String name) throws IOException {
        try (InputStream in = Objects.requireNonNull(PageTemplate.class.getResourceAsStream(name), name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
