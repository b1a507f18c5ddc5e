package org.gritwright.core.spi;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.net.MalformedURLException;
import java.net.URISyntaxException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.spi.ToolProvider;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;

/** Plug-ins that are written, compiled and put into a folder while a test runs. */
final class ProviderSources {
    private final Map<String, String> sources = new LinkedHashMap<>();
    private final Map<Class<?>, List<String>> services = new LinkedHashMap<>();

    /** A class of any kind; the package is in its name. */
    ProviderSources source(String className, String text) {
        sources.put(className, packageLine(className) + text);
        return this;
    }

    /** A conveyor type with an id of version 1, and further members. */
    ProviderSources conveyor(String className, String id, String members) {
        return source(className, """
                import java.util.List;
                import org.gritwright.core.spi.*;
                public class %s implements ConveyorType {
                    public TypeId id() { return TypeId.of("%s", 1); }
                    public int spiLevel() { return Spi.LEVEL; }
                    public List<Parameter<?>> parameters() { return List.of(); }
                    public boolean meteredByGate() { return false; }
                    public SweptVolume sweptVolume(Parameters given) { return area -> 1; }
                    %s
                }
                """.formatted(simpleName(className), id, members));
    }

    /** A gate type with an id of version 1. */
    ProviderSources gate(String className, String id) {
        return source(className, """
                import java.util.List;
                import org.gritwright.core.spi.*;
                public class %s implements GateType {
                    public TypeId id() { return TypeId.of("%s", 1); }
                    public int spiLevel() { return Spi.LEVEL; }
                    public List<Parameter<?>> parameters() { return List.of(); }
                    public GateShape shape(Parameters given) { return GateShape.none(); }
                }
                """.formatted(simpleName(className), id));
    }

    /** A pump type with an id of version 1. */
    ProviderSources pump(String className, String id) {
        return source(className, """
                import java.util.List;
                import org.gritwright.core.spi.*;
                import org.gritwright.units.*;
                public class %s implements PumpType {
                    public TypeId id() { return TypeId.of("%s", 1); }
                    public int spiLevel() { return Spi.LEVEL; }
                    public List<Parameter<?>> parameters() { return List.of(); }
                    public PumpOutput output(Parameters given) {
                        return PumpOutput.constant(Amounts.of(10, SpreadingUnits.MILLILITER_PER_REVOLUTION));
                    }
                }
                """.formatted(simpleName(className), id));
    }

    /** A flow-meter type with an id of version 1. */
    ProviderSources flowMeter(String className, String id) {
        return source(className, """
                import java.util.List;
                import org.gritwright.core.spi.*;
                import org.gritwright.units.*;
                public class %s implements FlowMeterType {
                    public TypeId id() { return TypeId.of("%s", 1); }
                    public int spiLevel() { return Spi.LEVEL; }
                    public List<Parameter<?>> parameters() { return List.of(); }
                    public PulseOutput output(Parameters given) {
                        return PulseOutput.constant(Amounts.of(2, SpreadingUnits.MILLILITER_PER_PULSE));
                    }
                }
                """.formatted(simpleName(className), id));
    }

    /** Lines of the services file of a kind of type. */
    ProviderSources service(Class<?> service, String... lines) {
        services.computeIfAbsent(service, s -> new ArrayList<>()).addAll(List.of(lines));
        return this;
    }

    private static String packageLine(String className) {
        int dot = className.lastIndexOf('.');
        return dot < 0 ? "" : "package " + className.substring(0, dot) + ";\n";
    }

    private static String simpleName(String className) {
        return className.substring(className.lastIndexOf('.') + 1);
    }

    /** Compiles for a class path and writes the services files. */
    Path into(Path folder) {
        compile(folder, List.of("-classpath", classPath()));
        services.forEach((service, lines) ->
                write(folder.resolve("META-INF").resolve("services").resolve(service.getName()), lines));
        return folder;
    }

    /** Compiles as a module; one of the sources is its {@code module-info}. */
    Path asModuleInto(Path folder, Path... otherModules) {
        String modulePath = Stream.concat(
                        Stream.of(System.getProperty("jdk.module.path")),
                        Stream.of(otherModules).map(Path::toString))
                .collect(Collectors.joining(File.pathSeparator));
        compile(folder, List.of("--module-path", modulePath));
        return folder;
    }

    /** By the tool and not by its interface, which the module under test doesn't read. */
    private void compile(Path folder, List<String> options) {
        ToolProvider javac = ToolProvider.findFirst("javac").orElseThrow();
        List<String> arguments = new ArrayList<>(List.of("-d", folder.toString(), "-encoding", "UTF-8", "-proc:none"));
        arguments.addAll(options);
        sources.forEach((name, text) ->
                arguments.add(write(folder.resolve("src").resolve(name.replace('.', '/') + ".java"), List.of(text))));
        if (!sources.isEmpty()) {
            StringWriter messages = new StringWriter();
            PrintWriter out = new PrintWriter(messages);
            int exit = javac.run(out, out, arguments.toArray(String[]::new));
            assertThat(exit).as(messages.toString()).isEqualTo(0);
        }
    }

    private static String write(Path file, List<String> lines) {
        try {
            Files.createDirectories(file.getParent());
            return Files.write(file, lines, UTF_8).toString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Where the libraries' classes are, be it a class path or a module path that they were loaded from. */
    private static String classPath() {
        return Stream.of(TypeRegistry.class, Amounts.class, Quantity.class)
                .map(ProviderSources::placeOf)
                .collect(Collectors.joining(File.pathSeparator));
    }

    private static String placeOf(Class<?> type) {
        try {
            return Path.of(type.getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toString();
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    /** A loader of these folders that asks the library's own loader first. */
    static URLClassLoader loader(Path... folders) {
        URL[] places = Stream.of(folders).map(ProviderSources::url).toArray(URL[]::new);
        return new URLClassLoader(places, TypeRegistry.class.getClassLoader());
    }

    private static URL url(Path folder) {
        try {
            return folder.toUri().toURL();
        } catch (MalformedURLException e) {
            throw new IllegalStateException(e);
        }
    }
}
