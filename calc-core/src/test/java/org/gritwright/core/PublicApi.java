package org.gritwright.core;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.lang.reflect.AnnotatedElement;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.Field;
import java.lang.reflect.GenericArrayType;
import java.lang.reflect.GenericDeclaration;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.lang.reflect.TypeVariable;
import java.lang.reflect.WildcardType;
import java.net.URISyntaxException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Prints what of a library the public can use and what a change can break: a line for each type and each of its public
 * and protected members, with its type's name in front.
 *
 * <p>It leaves out what the compiler adds or what follows from the rest, since compilers differ in it: synthetic and
 * bridge members, a record's accessors and canonical constructor, {@code values} and {@code valueOf} of an enum, and
 * what records and enums make of {@link Object}'s methods. Names of parameters are not part of it.
 */
final class PublicApi {
    private static final int DECLARATION_MODIFIERS =
            Modifier.PUBLIC | Modifier.PROTECTED | Modifier.STATIC | Modifier.ABSTRACT | Modifier.FINAL;

    private PublicApi() {}

    /** The exported packages of the modules in whose places these classes lie. */
    static List<String> ofModulesOf(Class<?>... anchors) {
        return Stream.of(anchors)
                .flatMap(anchor -> publicTypes(anchor).stream())
                .sorted(Comparator.comparing(Class::getName))
                .flatMap(type -> of(type).stream())
                .toList();
    }

    /** One type: its declaration first, then its members in a fixed order. */
    static List<String> of(Class<?> type) {
        List<String> lines = new ArrayList<>();
        lines.add(declaration(type));
        lines.addAll(constants(type));
        lines.addAll(fields(type));
        lines.addAll(constructors(type));
        lines.addAll(methods(type));
        return lines.stream().map(line -> name(type) + ": " + line).toList();
    }

    /** What differs, in words; empty if nothing does. */
    static String difference(List<String> agreed, List<String> found) {
        Set<String> added = new LinkedHashSet<>(found);
        agreed.forEach(added::remove);
        Set<String> removed = new LinkedHashSet<>(agreed);
        found.forEach(removed::remove);
        return Stream.of(section("added", added), section("removed", removed))
                .filter(section -> !section.isEmpty())
                .collect(Collectors.joining("\n"));
    }

    private static String section(String what, Set<String> lines) {
        return lines.isEmpty() ? "" : what + ":\n  " + String.join("\n  ", lines);
    }

    private static List<Class<?>> publicTypes(Class<?> anchor) {
        Path place = placeOf(anchor);
        Set<String> exported = exportedPackages(place);
        return classNames(place).stream()
                .filter(className -> exported.contains(className.substring(0, className.lastIndexOf('.'))))
                .<Class<?>>map(className -> load(className, anchor.getClassLoader()))
                .filter(PublicApi::isVisible)
                .toList();
    }

    private static Path placeOf(Class<?> anchor) {
        try {
            return Path.of(
                    anchor.getProtectionDomain().getCodeSource().getLocation().toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    /** From the module's descriptor, which is there on a class path too. */
    private static Set<String> exportedPackages(Path place) {
        return ModuleFinder.of(place).findAll().iterator().next().descriptor().exports().stream()
                .filter(exports -> !exports.isQualified())
                .map(ModuleDescriptor.Exports::source)
                .collect(Collectors.toSet());
    }

    private static Set<String> classNames(Path place) {
        try {
            if (Files.isDirectory(place)) {
                return classNamesUnder(place);
            }
            try (FileSystem jar = FileSystems.newFileSystem(place)) {
                return classNamesUnder(jar.getPath("/"));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Set<String> classNamesUnder(Path root) throws IOException {
        try (Stream<Path> files = Files.walk(root)) {
            return files.map(file -> root.relativize(file).toString())
                    .filter(file -> file.endsWith(".class") && !file.endsWith("-info.class"))
                    .map(file -> file.substring(0, file.length() - ".class".length())
                            .replace('\\', '.')
                            .replace('/', '.'))
                    .filter(file -> file.contains("."))
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }

    private static Class<?> load(String className, ClassLoader loader) {
        try {
            return Class.forName(className, false, loader);
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Whether the public or an heir can name the type. */
    private static boolean isVisible(Class<?> type) {
        return !type.isSynthetic()
                && !type.isAnonymousClass()
                && !type.isLocalClass()
                && isOpen(type.getModifiers())
                && (type.getDeclaringClass() == null || isVisible(type.getDeclaringClass()));
    }

    private static boolean isOpen(int modifiers) {
        return Modifier.isPublic(modifiers) || Modifier.isProtected(modifiers);
    }

    private static String declaration(Class<?> type) {
        StringBuilder text = new StringBuilder(annotations(type));
        text.append(typeModifiers(type)).append(kind(type)).append(typeParameters(type));
        if (type.isRecord()) {
            text.append(Stream.of(type.getRecordComponents())
                    .map(component -> name(component.getGenericType()) + " " + component.getName())
                    .collect(Collectors.joining(", ", "(", ")")));
        }
        Type superclass = type.getGenericSuperclass();
        if (superclass != null && !type.isEnum() && !type.isRecord() && !superclass.equals(Object.class)) {
            text.append(" extends ").append(name(superclass));
        }
        text.append(list(type.isInterface() ? " extends " : " implements ", type.getGenericInterfaces()));
        if (type.isSealed() && !type.isEnum()) {
            text.append(list(" permits ", type.getPermittedSubclasses()));
        }
        return text.toString();
    }

    private static String kind(Class<?> type) {
        if (type.isAnnotation()) {
            return "@interface";
        }
        if (type.isInterface()) {
            return "interface";
        }
        return type.isRecord() ? "record" : type.isEnum() ? "enum" : "class";
    }

    private static String typeModifiers(Class<?> type) {
        boolean plain = kind(type).equals("class");
        int modifiers = type.getModifiers() & (plain ? DECLARATION_MODIFIERS : Modifier.PUBLIC | Modifier.PROTECTED);
        String sealed = type.isSealed() && !type.isEnum() ? "sealed " : isUnsealed(type) ? "non-sealed " : "";
        return spaced(Modifier.toString(modifiers)) + sealed;
    }

    private static boolean isUnsealed(Class<?> type) {
        boolean ofSealed = Stream.concat(Stream.ofNullable(type.getSuperclass()), Stream.of(type.getInterfaces()))
                .anyMatch(Class::isSealed);
        return ofSealed && !type.isSealed() && !Modifier.isFinal(type.getModifiers()) && !type.isEnum();
    }

    private static List<String> constants(Class<?> type) {
        return Stream.of(type.getDeclaredFields())
                .filter(Field::isEnumConstant)
                .map(field -> annotations(field) + "constant " + field.getName())
                .sorted()
                .toList();
    }

    private static List<String> fields(Class<?> type) {
        return members(type, Class::getDeclaredFields)
                .filter(field -> !field.isSynthetic() && !field.isEnumConstant() && isOpen(field.getModifiers()))
                .map(field -> annotations(field)
                        + spaced(Modifier.toString(field.getModifiers() & Modifier.fieldModifiers()))
                        + name(field.getGenericType()) + " " + field.getName() + value(field))
                .sorted()
                .toList();
    }

    /** The value that compilers copy into the classes that use it. */
    private static String value(Field field) {
        boolean constant = Modifier.isStatic(field.getModifiers())
                && Modifier.isFinal(field.getModifiers())
                && (field.getType().isPrimitive() || field.getType().equals(String.class));
        if (!constant) {
            return "";
        }
        try {
            field.setAccessible(true);
            Object value = field.get(null);
            // JDKs differ in the shortest decimal of a double.
            return " = "
                    + (value instanceof Double number
                            ? Double.toHexString(number)
                            : value instanceof Float single ? Float.toHexString(single) : quoted(value));
        } catch (IllegalAccessException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String quoted(Object value) {
        return value instanceof String text ? "\"" + text.replace("\n", "\\n") + "\"" : String.valueOf(value);
    }

    private static List<String> constructors(Class<?> type) {
        Class<?>[] canonical = type.isRecord()
                ? Stream.of(type.getRecordComponents())
                        .map(RecordComponent::getType)
                        .toArray(Class<?>[]::new)
                : null;
        return Stream.of(type.getDeclaredConstructors())
                .filter(constructor -> !constructor.isSynthetic() && isOpen(constructor.getModifiers()))
                .filter(constructor -> !Arrays.equals(constructor.getParameterTypes(), canonical))
                .map(constructor -> annotations(constructor) + executable(constructor, modifiers(constructor), ""))
                .sorted()
                .toList();
    }

    private static List<String> methods(Class<?> type) {
        return members(type, Class::getDeclaredMethods)
                .filter(method -> !method.isSynthetic() && !method.isBridge() && isOpen(method.getModifiers()))
                .filter(Predicate.not(method -> followsFromTheRest(type, method)))
                .map(method -> annotations(method)
                        + executable(method, modifiers(method), name(method.getGenericReturnType()) + " "))
                .distinct()
                .sorted()
                .toList();
    }

    private static boolean followsFromTheRest(Class<?> type, Method method) {
        String signature = method.getName() + Arrays.toString(method.getParameterTypes());
        if (type.isRecord() && method.getParameterCount() == 0) {
            return Stream.of(type.getRecordComponents())
                            .anyMatch(component -> component.getName().equals(method.getName()))
                    || Set.of("hashCode[]", "toString[]").contains(signature);
        }
        if (type.isRecord()) {
            return signature.equals("equals[class java.lang.Object]");
        }
        return type.isEnum()
                && Set.of("values[]", "valueOf[class java.lang.String]", "toString[]")
                        .contains(signature);
    }

    /** A type's own members, and those that it has from types that can't be named. */
    private static <M> Stream<M> members(Class<?> type, java.util.function.Function<Class<?>, M[]> declared) {
        Stream<M> inherited = Stream.concat(Stream.ofNullable(type.getSuperclass()), Stream.of(type.getInterfaces()))
                .filter(above -> !isVisible(above))
                .flatMap(above -> members(above, declared));
        return Stream.concat(Stream.of(declared.apply(type)), inherited);
    }

    private static String modifiers(Executable executable) {
        boolean inInterface = executable.getDeclaringClass().isInterface();
        int modifiers = executable.getModifiers() & DECLARATION_MODIFIERS & ~(inInterface ? Modifier.PUBLIC : 0);
        String isDefault = executable instanceof Method method && method.isDefault() ? "default " : "";
        return isDefault + spaced(Modifier.toString(modifiers));
    }

    private static String executable(Executable executable, String modifiers, String returned) {
        Type[] types = executable.getGenericParameterTypes();
        if (types.length != executable.getParameterCount()) {
            // An inner class's constructor, whose first parameter has no generic type.
            types = executable.getParameterTypes();
        }
        List<String> parameters = new ArrayList<>();
        for (Type type : types) {
            parameters.add(name(type));
        }
        if (executable.isVarArgs()) {
            String last = parameters.remove(parameters.size() - 1);
            parameters.add(last.substring(0, last.length() - 2) + "...");
        }
        String name = executable instanceof Constructor<?>
                ? executable.getDeclaringClass().getSimpleName()
                : executable.getName();
        return modifiers
                + spaced(typeParameters(executable))
                + returned
                + name
                + parameters.stream().collect(Collectors.joining(", ", "(", ")"))
                + list(" throws ", executable.getGenericExceptionTypes());
    }

    private static String annotations(AnnotatedElement element) {
        return (element.isAnnotationPresent(Deprecated.class) ? "@Deprecated " : "")
                + (element.isAnnotationPresent(FunctionalInterface.class) ? "@FunctionalInterface " : "");
    }

    private static String typeParameters(GenericDeclaration declaration) {
        TypeVariable<?>[] variables = declaration.getTypeParameters();
        return variables.length == 0
                ? ""
                : Stream.of(variables)
                        .map(variable -> variable.getName() + bounds(variable.getBounds()))
                        .collect(Collectors.joining(", ", "<", ">"));
    }

    private static String bounds(Type[] bounds) {
        String text = Stream.of(bounds)
                .filter(bound -> !bound.equals(Object.class))
                .map(PublicApi::name)
                .collect(Collectors.joining(" & "));
        return text.isEmpty() ? "" : " extends " + text;
    }

    /** Names after a word, sorted, as their order means nothing; nothing for none. */
    private static String list(String word, Type[] types) {
        return types.length == 0
                ? ""
                : Stream.of(types).map(PublicApi::name).sorted().collect(Collectors.joining(", ", word, ""));
    }

    private static String spaced(String text) {
        return text.isEmpty() ? "" : text + " ";
    }

    private static String name(Type type) {
        if (type instanceof ParameterizedType parameterized) {
            return Stream.of(parameterized.getActualTypeArguments())
                    .map(PublicApi::name)
                    .collect(Collectors.joining(", ", name(parameterized.getRawType()) + "<", ">"));
        }
        if (type instanceof GenericArrayType array) {
            return name(array.getGenericComponentType()) + "[]";
        }
        if (type instanceof WildcardType wildcard) {
            return wildcard.getLowerBounds().length > 0
                    ? "? super " + name(wildcard.getLowerBounds()[0])
                    : "?" + bounds(wildcard.getUpperBounds());
        }
        if (type instanceof Class<?> plain) {
            String full = plain.getCanonicalName() == null ? plain.getName() : plain.getCanonicalName();
            return full.matches("java\\.lang\\.[A-Z].*") ? full.substring("java.lang.".length()) : full;
        }
        return type.getTypeName();
    }
}
