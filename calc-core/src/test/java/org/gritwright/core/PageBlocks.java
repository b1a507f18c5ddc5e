package org.gritwright.core;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.SpreaderType;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;

/** The tables of the pages that are made from the code. */
final class PageBlocks {
    /** Without doubt in the data, but no correction either: none can be computed, or it would be too large. */
    private static final Set<FindingCode> NO_CORRECTION =
            Set.of(FindingCode.OPEN_LOOP, FindingCode.CORRECTION_TOO_LARGE);

    private PageBlocks() {}

    /** A table, and where it stands. */
    record Block(Page page, String name, String text) {
        @Override
        public String toString() {
            return name + " in " + page.path();
        }
    }

    static List<Block> all() {
        return List.of(
                new Block(Page.README, "types", types()),
                new Block(Page.UNITS, "units", units()),
                new Block(Page.FINDINGS, "findings", findings()),
                new Block(Page.CHECKS, "published", PublishedPage.summary()));
    }

    /** One row for each built-in type, conveyors first, with its parameters. */
    private static String types() {
        TypeRegistry registry = BuiltInTypes.registry();
        Stream<String> rows = Stream.concat(
                registry.conveyors().stream().map(type -> type("conveyor", type)),
                registry.gates().stream().map(type -> type("gate", type)));
        return "| | type, version | parameters |\n|---|---|---|\n" + rows.collect(Collectors.joining());
    }

    private static String type(String what, SpreaderType type) {
        return "| " + what + " | " + code(type.id().name()) + ", " + type.id().version() + " | "
                + type.parameters().stream().map(PageBlocks::parameter).collect(Collectors.joining("; ")) + " |\n";
    }

    private static String parameter(Parameter<?> parameter) {
        return code(parameter.name())
                + (parameter.isList() ? " (" + parameter.fewest() + " to " + parameter.most() + " values)" : "")
                + (parameter.isWhole() ? ", a whole number" : "")
                + " from " + Amounts.format(parameter.lowest()) + " to " + Amounts.format(parameter.highest())
                + parameter
                        .standard()
                        .map(value -> ", default " + Amounts.format(value))
                        .orElse("");
    }

    /** One row for each kind of quantity, with all its units. */
    private static String units() {
        Map<String, List<UnitSymbol<?>>> byKind = UnitSymbol.all().stream()
                .collect(Collectors.groupingBy(
                        row -> UnitSymbol.kindName(row.kind()), LinkedHashMap::new, Collectors.toList()));
        return "| kind | symbol: name (also read as) |\n|---|---|\n"
                + byKind.entrySet().stream()
                        .map(kind -> "| " + kind.getKey() + " | "
                                + kind.getValue().stream().map(PageBlocks::unit).collect(Collectors.joining(" · "))
                                + " |\n")
                        .collect(Collectors.joining());
    }

    private static String unit(UnitSymbol<?> row) {
        String symbol = row.symbol().isEmpty() ? "no symbol" : code(row.symbol());
        String spellings = row.spellings().isEmpty()
                ? ""
                : row.spellings().stream().map(PageBlocks::code).collect(Collectors.joining(", ", " (", ")"));
        return symbol + ": " + row.name() + spellings;
    }

    private static String findings() {
        return "| finding | severity | forbids a correction | what it says |\n|---|---|---|---|\n"
                + Arrays.stream(FindingCode.values())
                        .map(code -> String.join(
                                " | ",
                                "| " + code(code.id()),
                                code.severity().name().toLowerCase(Locale.ROOT),
                                NO_CORRECTION.contains(code) || code.doubtsData() ? "yes" : "",
                                code.template().replaceAll("\\{(\\w+)}", "*$1*") + " |\n"))
                        .collect(Collectors.joining());
    }

    private static String code(String text) {
        return "`" + text + "`";
    }
}
