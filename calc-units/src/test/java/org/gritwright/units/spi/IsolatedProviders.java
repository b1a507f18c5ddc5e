package org.gritwright.units.spi;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.Enumeration;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import javax.measure.Unit;
import tech.units.indriya.AbstractUnit;

/**
 * An application that sees only this library, JSR 385, and Indriya, on its own class path: JSR 385 keeps its current
 * provider in a static field, and the test class path holds the oracles' providers too.
 */
final class IsolatedProviders extends URLClassLoader {
    private static final String SERVICES = "META-INF/services/javax.measure.spi.ServiceProvider";

    private final boolean withIndriyasProvider;

    IsolatedProviders(Path folder, boolean withIndriyasProvider, List<Class<?>> extraProviders) throws Exception {
        // No parent: the platform's loader would find the modules of the running test.
        super(classPath(folder, extraProviders), null);
        this.withIndriyasProvider = withIndriyasProvider;
    }

    private static URL[] classPath(Path folder, List<Class<?>> extraProviders) throws Exception {
        if (!extraProviders.isEmpty()) {
            for (Class<?> provider : extraProviders) {
                copy(provider, folder);
            }
            Path services = folder.resolve(SERVICES);
            Files.createDirectories(services.getParent());
            Files.write(services, extraProviders.stream().map(Class::getName).toList());
        }
        Stream<URI> jars = Stream.of(
                        SpreadingServiceProvider.class,
                        Unit.class,
                        AbstractUnit.class,
                        Class.forName("tech.uom.lib.common.function.Nameable"),
                        Class.forName("jakarta.inject.Named"))
                .map(IsolatedProviders::whereItIs);
        List<URI> places = Stream.concat(Stream.of(folder.toUri()), jars).toList();
        URL[] urls = new URL[places.size()];
        for (int i = 0; i < urls.length; i++) {
            urls[i] = places.get(i).toURL();
        }
        return urls;
    }

    private static void copy(Class<?> type, Path folder) throws IOException {
        Path file = folder.resolve(type.getName().replace('.', '/') + ".class");
        Files.createDirectories(file.getParent());
        try (InputStream bytes = type.getResourceAsStream(type.getSimpleName() + ".class")) {
            Files.copy(Objects.requireNonNull(bytes), file);
        }
    }

    private static URI whereItIs(Class<?> type) {
        return URI.create(
                type.getProtectionDomain().getCodeSource().getLocation().toString());
    }

    @Override
    public Enumeration<URL> findResources(String name) throws IOException {
        List<URL> found = Collections.list(super.findResources(name));
        if (name.equals(SERVICES) && !withIndriyasProvider) {
            found.removeIf(url -> url.toString().contains("indriya"));
        }
        return Collections.enumeration(found);
    }

    /** What a static method of JSR 385's ServiceProvider says in that application. */
    Object ask(String method, Object... arguments) throws Exception {
        Thread thread = Thread.currentThread();
        ClassLoader before = thread.getContextClassLoader();
        thread.setContextClassLoader(this);
        try {
            Class<?>[] types = Stream.of(arguments).map(Object::getClass).toArray(Class<?>[]::new);
            return loadClass("javax.measure.spi.ServiceProvider")
                    .getMethod(method, types)
                    .invoke(null, arguments);
        } finally {
            thread.setContextClassLoader(before);
        }
    }
}
