package org.gritwright.examples.fleetday;

import io.pebbletemplates.pebble.extension.AbstractExtension;
import io.pebbletemplates.pebble.extension.Filter;
import io.pebbletemplates.pebble.template.EvaluationContext;
import io.pebbletemplates.pebble.template.PebbleTemplate;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The filter {@code minus}: sentences of the library write -3 %, tables −3 %; on one page both have the minus sign. */
final class MinusSign extends AbstractExtension implements Filter {
    private static final Pattern HYPHEN = Pattern.compile("(?<![^ (])-(?=[0-9])");

    @Override
    public Map<String, Filter> getFilters() {
        return Map.of("minus", this);
    }

    @Override
    public List<String> getArgumentNames() {
        return List.of();
    }

    @Override
    public Object apply(
            @Nullable Object input,
            Map<String, Object> arguments,
            PebbleTemplate template,
            EvaluationContext context,
            int line) {
        return HYPHEN.matcher(String.valueOf(input)).replaceAll("−");
    }
}
