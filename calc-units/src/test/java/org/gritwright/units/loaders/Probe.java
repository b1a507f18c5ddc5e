package org.gritwright.units.loaders;

import java.io.File;
import java.io.IOException;
import java.lang.module.Configuration;
import java.lang.module.ModuleFinder;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Enumeration;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.FutureTask;
import java.util.stream.Stream;

/**
 * A program for a Java virtual machine of its own: runs tasks, one after the other, each on a new thread or one of the
 * common pool and with a given context class loader, and prints a line for each.
 *
 * <p>Arguments: the {@link Home} of tasks and library; the path of the tasks' classes; the path of the library's; and
 * any number of tasks, each written as {@code CLASS@THREAD@CONTEXT}.
 */
public final class Probe {

    /** Which class loader loads tasks and library. */
    enum Home {
        /** The program's own. */
        PROGRAM,
        /** One below the program's, as in a web application or an application of nested jars. */
        NESTED,
        /** That of a module layer, below the program's; the tasks are in no module. */
        LAYER
    }

    /** A context class loader that refuses everything, like that of an application that was stopped. */
    private static final class Stopped extends ClassLoader {
        Stopped() {
            super(null);
        }

        @Override
        public Enumeration<URL> getResources(String name) {
            throw new IllegalStateException("stopped");
        }
    }

    private final List<Path> libraries;
    private final ClassLoader home;

    private Probe(Home home, List<Path> tasks, List<Path> libraries) throws IOException {
        this.libraries = libraries;
        this.home = switch (home) {
            case PROGRAM -> Probe.class.getClassLoader();
            case NESTED ->
                below(
                        Probe.class.getClassLoader(),
                        Stream.concat(tasks.stream(), libraries.stream()).toList());
            case LAYER -> below(layer(libraries), tasks);
        };
    }

    public static void main(String[] arguments) throws Exception {
        Probe probe = new Probe(Home.valueOf(arguments[0]), paths(arguments[1]), paths(arguments[2]));
        StringBuilder lines = new StringBuilder();
        for (String task : Arrays.asList(arguments).subList(3, arguments.length)) {
            String[] parts = task.split("@", -1);
            lines.append(probe.run(parts[0], parts[1], probe.context(parts[2]))).append('\n');
        }
        System.out.write(lines.toString().getBytes(StandardCharsets.UTF_8));
        System.out.flush();
    }

    private static List<Path> paths(String path) {
        return Arrays.stream(path.split(File.pathSeparator, -1)).map(Path::of).toList();
    }

    private static ClassLoader below(ClassLoader parent, List<Path> places) throws IOException {
        URL[] urls = new URL[places.size()];
        for (int i = 0; i < urls.length; i++) {
            urls[i] = places.get(i).toUri().toURL();
        }
        return new URLClassLoader(urls, parent);
    }

    private static ClassLoader layer(List<Path> libraries) {
        String module = "org.gritwright.units";
        ModuleLayer boot = ModuleLayer.boot();
        Configuration modules = boot.configuration()
                .resolve(ModuleFinder.of(libraries.toArray(Path[]::new)), ModuleFinder.of(), Set.of(module));
        return boot.defineModulesWithOneLoader(modules, Probe.class.getClassLoader())
                .findLoader(module);
    }

    private ClassLoader context(String name) throws IOException {
        return switch (name) {
            case "home" -> home;
            case "program" -> Probe.class.getClassLoader();
            case "platform" -> ClassLoader.getPlatformClassLoader();
            case "none" -> null;
            case "stopped" -> new Stopped();
            // That of another application, with copies of the same libraries.
            case "neighbor" -> below(ClassLoader.getPlatformClassLoader(), libraries);
            default -> throw new IllegalArgumentException(name);
        };
    }

    private String run(String task, String thread, ClassLoader context) throws Exception {
        FutureTask<String> future = new FutureTask<>(() -> result(task, context));
        if (thread.equals("common-pool")) {
            // Such a thread has its context class loader from the pool.
            ForkJoinPool.commonPool().execute(future);
        } else {
            Thread own = new Thread(future, thread);
            own.setContextClassLoader(context);
            own.start();
        }
        return future.get();
    }

    private String result(String task, ClassLoader context) throws ReflectiveOperationException {
        Thread thread = Thread.currentThread();
        if (thread.getContextClassLoader() != context) {
            return "this thread has another context class loader: " + thread.getContextClassLoader();
        }
        Callable<?> made = Class.forName(task, true, home)
                .asSubclass(Callable.class)
                .getConstructor()
                .newInstance();
        String result;
        try {
            result = String.valueOf(made.call());
        } catch (Exception | Error e) {
            return e + " caused by " + e.getCause();
        }
        return thread.getContextClassLoader() == context ? result : "the context class loader was changed";
    }
}
